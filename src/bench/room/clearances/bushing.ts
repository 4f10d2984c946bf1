import { millimetresText } from "../../../lengths.ts";
import type { Measures } from "../measures.ts";
import type { PlacedPart } from "../placed-parts.ts";
import { type Clearance, measured, notSaid } from "./clearance.ts";

/** Metres of thread: as measured, else as the part is sold. */
function threadOf({ measures, preset }: PlacedPart): number | undefined {
  return measures.bushing ?? (preset?.bushing?.length === undefined ? undefined : preset.bushing.length / 1000);
}

/** Whether a thread goes through the guard and what lies about it. */
export function bushingClearances(placed: PlacedPart, { guard, tolerance }: Measures): Clearance[] {
  const thread = threadOf(placed);
  if (placed.part.kind !== "pot" && thread === undefined) return [];
  const at = { part: placed.name, against: "guard", kind: "bushing" } as const;
  if (thread === undefined) return [notSaid({ ...at, message: "length of its thread not said" })];
  const { thickness, stack } = guard;
  if (thickness === undefined || stack === undefined) {
    const what = thickness === undefined ? "thickness of the guard" : "height of nut and washers together";
    return [notSaid({ ...at, message: `${what} not said` })];
  }
  const clearance = thread - thickness - stack;
  const needed = `guard, nut and washers take ${millimetresText(thickness + stack)}`;
  const message =
    clearance >= 0
      ? `Of its ${millimetresText(thread)} of thread ${needed}.`
      : `Its thread is ${millimetresText(thread)} long, and ${needed}: the nut does not hold with all its turns.`;
  return [measured({ ...at, clearance, tolerance: 2 * tolerance, message })];
}
