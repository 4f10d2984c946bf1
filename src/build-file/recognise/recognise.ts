import { type PlanInput, planSchema } from "../plans/plan-schema.ts";
import type { BuildInput } from "../schema.ts";
import { type Edit, editsBetween } from "./edits.ts";
import { type Guard, guardOf } from "./guard.ts";
import { asHinted } from "./hint.ts";
import { firstReading } from "./reading/first-reading.ts";
import { rolesIn } from "./reading/roles-in.ts";
import { descend, type Trial, tryOut } from "./search.ts";
import type { Sketch } from "./sketch.ts";

/** More than this done by hand, and it is a guard of its own. */
export const MAX_EDITS = 8;
/** The largest guards of plans have about a hundred lugs; with four times as many far more than that is done by hand. */
const MAX_LUGS = 400;

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

function hintedTrial(guard: Guard, first: Sketch, hint: PlanInput | undefined): Trial | undefined {
  const read = hint === undefined ? undefined : planSchema.safeParse(hint);
  const sketch = read?.success ? asHinted(guard, first, read.data) : undefined;
  return sketch && tryOut(guard, sketch);
}

/** A resistor from a pickup's hot side to ground, where it is across a volume's lugs too, is said to be across the pickup. */
function acrossPickups(guard: Guard, trial: Trial): Trial {
  const pickups = Object.keys(trial.sketch.pickups).map((pickup) => ({ pickup }));
  let best = trial;
  for (const [i, { part, across }] of trial.sketch.resistors.entries()) {
    if ("pickup" in across) continue;
    const others = pickups.map((other) => ({
      ...best.sketch,
      resistors: best.sketch.resistors.with(i, { part, across: other }),
    }));
    best = others.map((sketch) => tryOut(guard, sketch)).find((other) => other && other.apart <= best.apart) ?? best;
  }
  return best;
}

/** Edits that a slip of the hand makes, a wire on another lug at most: no other plan is looked for where the hint is so near. */
const AT_ONCE = 2;

/** @param hinted a plan that wins a tie */
function nearest(guard: Guard, hinted: Trial | undefined, first: Trial | undefined): Trial | undefined {
  const isHintFirst = hinted !== undefined && hinted.apart <= (first?.apart ?? Number.POSITIVE_INFINITY);
  const [start, other] = isHintFirst ? [hinted, first] : [first, hinted];
  const near = start && descend(guard, start);
  const isSettled = near?.apart === 0 || (isHintFirst && near !== undefined && near.apart <= AT_ONCE);
  const far = isSettled || !other ? undefined : descend(guard, other);
  const [byHint, bySight] = isHintFirst ? [near, far] : [far, near];
  if (byHint && !(bySight && bySight.apart < byHint.apart)) return byHint;
  return bySight && acrossPickups(guard, bySight);
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
  if (guard.table.lugs.length > MAX_LUGS) return { plan: null, why: "It has far more parts than any plan." };
  const roles = rolesIn(guard);
  if (typeof roles === "string") return { plan: null, why: roles };
  const first = firstReading(guard, roles);
  const best = nearest(guard, hintedTrial(guard, first, hint), tryOut(guard, first));
  if (!best || best.apart > MAX_EDITS)
    return { plan: null, why: "Its wires are too far from those of any plan with the same parts." };
  const { plan, draft, names, fit } = best;
  return { plan, edits: editsBetween(guard, draft, names, fit), names: Object.fromEntries(names) };
}
