import { type PlanInput, planSchema } from "../plans/plan-schema.ts";
import type { BuildInput } from "../schema.ts";
import { type Edit, editsBetween } from "./edits.ts";
import { firstReading, rolesIn } from "./first-reading.ts";
import { type Guard, guardOf } from "./guard.ts";
import { asHinted } from "./hint.ts";
import { descend, type Trial, tryOut } from "./search.ts";
import type { Sketch } from "./sketch.ts";

/** More than this done by hand, and it is a guard of its own. */
export const MAX_EDITS = 8;

/** The plan of a guard, what was done by hand on top of it, and the guard's name of each part of the plan. */
export interface Recognised {
  readonly plan: PlanInput;
  readonly edits: readonly Edit[];
  readonly names: Readonly<Record<string, string>>;
}

export interface Unrecognised {
  readonly plan: null;
  /** One plain sentence. */
  readonly why: string;
}

function startsFor(guard: Guard, first: Sketch, hint: PlanInput | undefined): Trial[] {
  const read = hint === undefined ? undefined : planSchema.safeParse(hint);
  const hinted = read?.success ? asHinted(guard, first, read.data) : undefined;
  return [hinted, first].flatMap((sketch) => {
    const trial = sketch && tryOut(guard, sketch);
    return trial ? [trial] : [];
  });
}

function nearest(guard: Guard, starts: readonly Trial[]): Trial | undefined {
  const exact = starts.find(({ apart }) => apart === 0);
  if (exact) return exact;
  let best: Trial | undefined;
  for (const start of starts) {
    const found = descend(guard, start);
    if (!best || found.apart < best.apart) best = found;
    if (best.apart === 0) break;
  }
  return best;
}

/**
 * The plan that a guard is wired by, whatever its parts are called and whichever way its wires run; labels, places, tolerances
 * and what the wires are made of do not count. Where none is just so, the nearest and what was done by hand on top of it.
 * @param build a long form
 * @param hint a plan that it may well be; of two that are equally near it is preferred
 */
export function recognise(build: BuildInput, hint?: PlanInput): Recognised | Unrecognised {
  const guard = guardOf(build);
  if (typeof guard === "string") return { plan: null, why: guard };
  const roles = rolesIn(guard);
  if (typeof roles === "string") return { plan: null, why: roles };
  const best = nearest(guard, startsFor(guard, firstReading(guard, roles), hint));
  if (!best || best.apart > MAX_EDITS)
    return { plan: null, why: "Its wires are too far from those of any plan with the same parts." };
  const { plan, draft, names, fit } = best;
  return { plan, edits: editsBetween(guard, draft, names, fit), names: Object.fromEntries(names) };
}
