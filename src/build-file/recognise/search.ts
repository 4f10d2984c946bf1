import { PresolderError } from "../../errors.ts";
import { draftOf } from "../expand.ts";
import type { Draft } from "../plans/draft.ts";
import type { PlanInput } from "../plans/plan-schema.ts";
import { type Fit, fitOnto } from "./fit.ts";
import type { Guard } from "./guard.ts";
import { type Choice, choicesAbout } from "./neighbours.ts";
import { namesIn, planIn, readPlan, type Sketch } from "./sketch.ts";
import { valuesApart } from "./values-apart.ts";

/** A plan laid onto a guard. */
export interface Trial {
  readonly sketch: Sketch;
  readonly plan: PlanInput;
  readonly draft: Draft;
  readonly names: ReadonlyMap<string, string>;
  readonly fit: Fit;
  /** Edits that make the guard of the plan. */
  readonly apart: number;
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
  const leftOut = Object.keys(draft.parts).length - names.size;
  const added = Object.keys(guard.build.parts).length - names.size;
  const values = valuesApart(guard, draft, names).length;
  return { sketch, plan, draft, names, fit, apart: fit.apart + leftOut + added + values };
}

function better(guard: Guard, best: Trial, choice: Choice): Trial {
  let nearest = best;
  for (const sketch of choice) {
    const trial = tryOut(guard, sketch);
    if (trial && trial.apart < nearest.apart) nearest = trial;
    if (nearest.apart === 0) break;
  }
  return nearest;
}

/** Changes one thing at a time until no change brings the plan nearer to the guard. */
export function descend(guard: Guard, from: Trial): Trial {
  let best = from;
  for (let improved = true; improved && best.apart > 0; ) {
    improved = false;
    const count = choicesAbout(guard, best.sketch).length;
    for (let i = 0; i < count && best.apart > 0; i++) {
      const choices = choicesAbout(guard, best.sketch)[i]?.() ?? [];
      for (const choice of choices) {
        const found = better(guard, best, choice);
        if (found.apart >= best.apart) continue;
        [best, improved] = [found, true];
        break;
      }
    }
  }
  return best;
}
