import type { Build } from "../../build-file/schema.ts";
import { withReverseWound, withScreenedWires } from "./changed-build.ts";
import { AS_DRAWN, Guitar } from "./guitar.ts";
import { routesOf } from "./routes.ts";

export const REMEDY_NAMES = ["shielded-cavity", "reverse-wound", "twisted-pair", "screened-wire"] as const;
export type RemedyName = (typeof REMEDY_NAMES)[number];

/** A guard as it would be with one thing changed. */
export interface Remedy {
  readonly name: RemedyName;
  /** Null where there is nothing to change. */
  readonly guitar: Guitar | null;
  /** The pickup to change. */
  readonly pickup?: string;
}

/** What could be done against hum, each on the guard as it is. */
export function remediesFor(build: Build): Remedy[] {
  const other = withReverseWound(build);
  return [
    { name: "shielded-cavity", guitar: new Guitar(build, { ...AS_DRAWN, isCavityScreened: true }) },
    {
      name: "reverse-wound",
      guitar: other && new Guitar(other.build),
      ...(other && { pickup: other.pickup }),
    },
    { name: "twisted-pair", guitar: new Guitar(build, { ...AS_DRAWN, isTwisted: true }) },
    { name: "screened-wire", guitar: new Guitar(withScreenedWires(build, routesOf(build, AS_DRAWN))) },
  ];
}
