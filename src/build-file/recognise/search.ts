import { PresolderError } from "../../errors.ts";
import { draftOf } from "../expand.ts";
import type { Draft } from "../plans/draft.ts";
import type { PlanInput } from "../plans/plan-schema.ts";
import { type Distance, type Fit, fitOnto, isNearer } from "./fit.ts";
import type { Guard } from "./guard.ts";
import { type Choice, choicesAbout } from "./neighbours.ts";
import { namesIn, planIn, readPlan, type Sketch } from "./sketch.ts";
import { valuesApart } from "./values-apart.ts";

/** A plan laid onto a guard. */
export interface Trial extends Distance {
  readonly sketch: Sketch;
  readonly plan: PlanInput;
  readonly draft: Draft;
  readonly names: ReadonlyMap<string, string>;
  readonly fit: Fit;
}

/**
 * An added part as two edits, whatever it is wired to: as many as one leg on the wrong lug, so that neither is likelier. Its own
 * wires have been counted among what is apart.
 */
function addedParts(guard: Guard, names: ReadonlyMap<string, string>): number {
  const used = new Set(names.values());
  const added = new Set(Object.keys(guard.build.parts).filter((name) => !used.has(name)));
  if (added.size === 0) return 0;
  const sizes = new Int32Array(guard.netCount);
  for (const net of guard.netOf) sizes[net] = sizes[net]! + 1;
  const wired = guard.table.lugs.filter(({ part }, lug) => added.has(part) && sizes[guard.netOf[lug]!]! > 1);
  return 2 * added.size - wired.length;
}

/** The plan of a sketch laid onto its guard; undefined where no such plan can be wired. */
export function tryOut(guard: Guard, sketch: Sketch): Trial | undefined {
  const plan = planIn(guard, sketch);
  let draft: Draft;
  try {
    draft = draftOf(readPlan(plan), guard.build.strings.scale);
  } catch (error) {
    if (error instanceof PresolderError) return undefined;
    throw error;
  }
  const names = new Map([...namesIn(sketch)].filter(([planName]) => planName in draft.parts));
  const fit = fitOnto(guard, draft, names);
  const { apart, together } = fit;
  const leftOut = Object.keys(draft.parts).length - names.size;
  const added = addedParts(guard, names);
  const values = valuesApart(guard, draft, names).length;
  return { sketch, plan, draft, names, fit, apart: apart + leftOut + added + values, together };
}

/** Lugs that are together are compared only where as many parts are the plan's: another part brings its own. */
function isBetter(a: Trial, b: Trial): boolean {
  return a.names.size === b.names.size ? isNearer(a, b) : a.apart < b.apart;
}

/** Plans tried from one start: a guard of a dozen idle switches would leave thousands, and any that people build a few dozen. */
const MAX_TRIALS = 150;

/**
 * Changes one thing at a time until no change brings the plan nearer to the guard.
 * @param from a plan to begin with
 */
export function descend(guard: Guard, from: Trial): Trial {
  let best = from;
  let trials = 0;
  const isDone = () => best.apart === 0 || trials >= MAX_TRIALS;
  const tryChoice = (choice: Choice) => {
    let nearest = best;
    for (const sketch of choice) {
      if (nearest.apart === 0 || trials++ >= MAX_TRIALS) break;
      const trial = tryOut(guard, sketch);
      if (trial && isBetter(trial, nearest)) nearest = trial;
    }
    const isFound = nearest !== best;
    best = nearest;
    return isFound;
  };
  for (let improved = true; improved && !isDone(); ) {
    improved = false;
    // A choice taken changes what the others are about, so they are drawn up anew.
    for (let i = 0; i < choicesAbout(guard, best.sketch).length && !isDone(); i++)
      improved = choicesAbout(guard, best.sketch)[i]!().some(tryChoice) || improved;
  }
  return best;
}
