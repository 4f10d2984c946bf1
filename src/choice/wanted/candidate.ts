import type { PlanFormInput } from "../../build-file/expand.ts";
import type { PlanInput } from "../../build-file/plans/plan-schema.ts";
import { parseQuantity } from "../../build-file/quantity.ts";
import { readBuild } from "../../build-file/read-build.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Controls } from "../../build-file/settings.ts";
import type { Drive } from "../drive.ts";
import { Guard } from "../guard.ts";
import type { Combination } from "../search/trials.ts";
import { Cells } from "./cells.ts";
import { Measured } from "./measured.ts";
import { type WishReached, wishReached } from "./score.ts";
import type { Shape } from "./space/shapes.ts";
import { type Axis, axesOf, type Bleed, planToTry, type Values } from "./space/values.ts";
import type { Wish } from "./wish.ts";

/** What stands around every guard that is tried. */
export type Surroundings = Pick<PlanFormInput, "cable" | "load" | "strings">;

export interface Question {
  readonly wishes: readonly Wish[];
  readonly values: Values;
  readonly surroundings: Surroundings;
  /** What the coils of a guard are driven by where its sounds are weighed. */
  readonly driveOf: (guard: Guard) => Drive;
}

/** What a guard makes of the wishes. */
export interface Outcome {
  readonly cost: number;
  readonly wishes: readonly WishReached[];
}

function bleedOf({ trebleBleed }: PlanInput): Bleed {
  if (!trebleBleed) return null;
  const si = (written: number | string, dimension: "capacitance" | "resistance") =>
    typeof written === "number" ? written : parseQuantity(written, dimension).value;
  const capacitance = si(trebleBleed.capacitance, "capacitance");
  return trebleBleed.parallel === undefined
    ? { capacitance }
    : { capacitance, parallel: si(trebleBleed.parallel, "resistance") };
}

/** A shape ready to be tried with other values. */
export class Candidate {
  readonly shape: Shape;
  readonly build: Build;
  readonly cells: Cells;
  readonly axes: readonly Axis[];
  readonly #question: Question;
  readonly #guard: Guard;
  readonly #drive: Drive;

  /** @throws PresolderError BUILD_INVALID where the shape cannot be wired */
  constructor(shape: Shape, question: Question) {
    this.shape = shape;
    this.#question = question;
    this.build = readBuild({ presolder: 1, plan: planToTry(shape.plan), ...question.surroundings });
    this.#guard = new Guard(this.build);
    this.#drive = question.driveOf(this.#guard);
    this.cells = new Cells(this.build, this.#guard.controls, question.wishes);
    this.axes = axesOf(this.build, bleedOf(shape.plan), question.values);
  }

  get controls(): Controls {
    return this.#guard.controls;
  }

  get own(): Combination {
    return this.axes.map(({ own }) => own);
  }

  get sizes(): readonly number[] {
    return this.axes.map(({ size }) => size);
  }

  get combinations(): number {
    return this.sizes.reduce((product, size) => product * size, 1);
  }

  guardOf(combination: Combination): Guard {
    return this.#guard.with(this.axes.flatMap((axis, index) => axis.patchesFor(combination[index]!)));
  }

  planOf(combination: Combination): PlanInput {
    return this.axes.reduce((plan, axis, index) => axis.planWith(plan, combination[index]!), this.shape.plan);
  }

  outcomeOf(guard: Guard): Outcome {
    const measured = new Measured(guard, this.#drive, this.cells.main);
    const wishes = this.#question.wishes.map((wish) => wishReached(wish, this.cells.for(wish.where), measured));
    return { wishes, cost: wishes.reduce((sum, { cost }) => sum + cost, 0) };
  }

  /** How many values differ from the plan's own. */
  changedIn(combination: Combination): number {
    return this.axes.filter(({ own }, index) => own !== combination[index]).length;
  }
}
