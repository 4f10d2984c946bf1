import { partSchema } from "../../src/build-file/schema.ts";
import type { OwnedPart } from "../../src/drawer/drawer-schema.ts";
import { type Drawer, type DrawerInput, drawerSchema } from "../../src/drawer/drawer-schema.ts";
import type { Need } from "../../src/drawer/needs.ts";

export function drawerOf(input: DrawerInput): Drawer {
  return drawerSchema.parse(input);
}

export const part = (input: Parameters<typeof partSchema.parse>[0]) => partSchema.parse(input) as OwnedPart;

export const cap = (capacitance: string | number, rest: object = {}) => ({
  kind: "cap" as const,
  capacitance,
  ...rest,
});
export const pot = (resistance: string | number, rest: object = {}) => ({
  kind: "pot" as const,
  resistance,
  taper: "audio" as const,
  ...rest,
});

export function needs(...parts: object[]): Need[] {
  return parts.map((each, index) => ({ guard: 0, name: `part${index + 1}`, part: part(each) }));
}
