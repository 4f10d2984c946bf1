import type { CoilValues } from "../../response/coil-ladder.ts";
import { type CoilShape, coilShape, type Guess, type LossModel, startsFor } from "./coil-shapes.ts";
import { type Free, takeOut } from "./free.ts";
import { independentShare, type Stretch } from "./independent-share.ts";
import { leastSquares, type Solution } from "./least-squares.ts";

/** What a fit is made from: measured numbers as residuals of a coil, and what is known beside them. */
export interface FitProblem {
  readonly guess: Guess;
  /** Differences of measured and computed values, not yet divided by any precision. */
  readonly errors: (coil: CoilValues) => Float64Array;
  /** How large each difference is expected to be beside the others, 1 for a usual one; left out: all alike. */
  readonly scale?: Float64Array | undefined;
  /** Standard deviation of those differences where the caller knows it; else the fit finds it from its residuals. */
  readonly precision: number | undefined;
  /** DC resistance read on a meter, with its relative standard deviation. */
  readonly resistance: { readonly ohms: number; readonly precision: number } | undefined;
  /** What of the errors is taken out before they count: levels and delays that nobody knows. */
  readonly free: readonly Free[];
  /** Stretches of the errors, from and to, that follow one another in frequency: how alike neighbours are tells how many count. */
  readonly runs: readonly Stretch[];
  readonly models: readonly LossModel[];
  /** What to measure besides, for a refusal. */
  readonly remedy: string;
  /** Called between evaluations; may throw to give the work up. */
  readonly checkpoint: (() => void) | undefined;
}

/** Starting precision, replaced by what the residuals say. */
const ASSUMED_PRECISION = 0.005;
const REWEIGHTINGS = 2;
/** Enough to see which starting point leads anywhere. */
const TRIAL_ITERATIONS = 5;
/** Precision that no instrument has; keeps perfect data from a division by zero. */
const LEAST_PRECISION = 1e-9;

/** One loss model fitted, for better or worse. */
export interface Attempt {
  readonly shape: CoilShape;
  readonly solution: Solution;
  readonly errors: Float64Array;
  /** Standard deviation of one error. */
  readonly sigma: number;
  /** Of the errors, how many count as independent. */
  readonly share: number;
  readonly degreesOfFreedom: number;
  readonly aicc: number;
}

export function exponentials(logs: Float64Array): Float64Array {
  return logs.map(Math.exp);
}

function dataErrors(problem: FitProblem, shape: CoilShape, logs: Float64Array): Float64Array {
  problem.checkpoint?.();
  const { scale, free } = problem;
  const plain = problem.errors(shape.coilOf(exponentials(logs)));
  const errors = scale ? plain.map((error, i) => error / scale[i]!) : plain;
  for (const { from, along } of free)
    takeOut(errors, { from, along: scale ? along.map((each, i) => each / scale[from + i]!) : along });
  return errors;
}

function solve(
  problem: FitProblem,
  shape: CoilShape,
  start: Float64Array,
  sigma: number,
  iterations?: number,
): Solution {
  const { resistance } = problem;
  return leastSquares(
    (logs) => {
      const errors = dataErrors(problem, shape, logs);
      const scaled = new Float64Array(errors.length + (resistance ? 1 : 0));
      for (let i = 0; i < errors.length; i++) scaled[i] = errors[i]! / sigma;
      if (resistance) scaled[errors.length] = (logs[0]! - Math.log(resistance.ohms)) / resistance.precision;
      return scaled;
    },
    start,
    iterations,
  );
}

function bestStart(problem: FitProblem, shape: CoilShape, sigma: number): Solution {
  const starts = startsFor(shape.loss, problem.guess).map((start) => Float64Array.from(start, Math.log));
  const tried = starts.map((start) => solve(problem, shape, start, sigma, TRIAL_ITERATIONS));
  const best = tried.reduce((least, solution) => (solution.chiSquare < least.chiSquare ? solution : least));
  return solve(problem, shape, best.parameters, sigma);
}

/** Fits one loss model. @returns null where it has more values than there are measurements */
export function attempt(problem: FitProblem, loss: LossModel): Attempt | null {
  const shape = coilShape(loss);
  let sigma = problem.precision ?? ASSUMED_PRECISION;
  let solution = bestStart(problem, shape, sigma);
  const count = dataErrors(problem, shape, solution.parameters).length;
  const unknowns = shape.names.length + problem.free.length - (problem.resistance ? 1 : 0);
  const degreesOfFreedom = count - unknowns;
  if (degreesOfFreedom < (problem.precision === undefined ? 1 : 0)) return null;
  const spread = () => {
    const errors = dataErrors(problem, shape, solution.parameters);
    return Math.max(
      LEAST_PRECISION,
      Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / degreesOfFreedom),
    );
  };
  for (let round = 0; problem.precision === undefined && round < REWEIGHTINGS; round++) {
    sigma = spread();
    solution = solve(problem, shape, solution.parameters, sigma);
  }
  const share =
    problem.precision === undefined
      ? independentShare(dataErrors(problem, shape, solution.parameters), problem.runs)
      : 1;
  if (share < 1) solution = solve(problem, shape, solution.parameters, sigma / Math.sqrt(share));
  const errors = dataErrors(problem, shape, solution.parameters);
  const meanSquare = Math.max(LEAST_PRECISION ** 2, errors.reduce((sum, error) => sum + error * error, 0) / count);
  const k = unknowns + 1;
  const aicc = count * Math.log(meanSquare) + 2 * k + (2 * k * (k + 1)) / Math.max(1, count - k - 1);
  const { scale } = problem;
  const plain = scale ? errors.map((error, i) => error * scale[i]!) : errors;
  return { shape, solution, errors: plain, sigma, share, degreesOfFreedom, aicc };
}

/** Standard errors of the parameters' logarithms; Infinity where the data tell nothing. */
export function relativeErrors({ shape, solution }: Attempt): number[] {
  const size = shape.names.length;
  return shape.names.map((_, i) => Math.sqrt(solution.covariance?.[i * size + i] ?? Number.POSITIVE_INFINITY));
}
