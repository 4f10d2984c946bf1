import "./zod-without-eval.ts";
import type { DrawerItem } from "../../bench/parts/drawer.ts";
import { partSchema } from "../../build-file/schema.ts";
import type { DrawerRequest } from "../../contract/bench/bench.ts";

/** Parts of the drawer as a build file writes them, read. @throws ZodError for what is no part */
export function readDrawer(drawer: readonly DrawerRequest[]): readonly DrawerItem[] {
  return drawer.map(({ part, quantity = 1 }) => ({ part: partSchema.parse(part), quantity }));
}
