import type { CoilValues } from "../../response/coil-ladder.ts";
import { type CoilShape, coilShape, type Guess, type LossModel, startsFor } from "./coil-shapes.ts";
import { type Free, takeOut } from "./free.ts";
import type { Stretch } from "./independent-share.ts";
import { leastSquares, type Solution } from "./least-squares.ts";
import { ANY_COIL, type UsualCoil, unusualness } from "./usual-coils.ts";
import { type Expected, shareOf, usualSigma, type Weighed, weighed } from "./weighing.ts";

/** What a fit is made from: measured numbers as residuals of a coil, and what is known beside them. */
export interface FitProblem {
  readonly guess: Guess;
  /**
   * Differences of measured and computed values, not yet divided by any precision.
   * @param beside what is fitted along, in the order of `beside`
   */
  readonly errors: (coil: CoilValues, beside: Float64Array) => Float64Array;
  /** Standard deviations about 0 of what is fitted along beside the coil, each by its logarithm; left out: nothing is. */
  readonly beside?: readonly number[] | undefined;
  /** How large each difference is expected to be; left out: all alike. */
  readonly expected?: Expected | undefined;
  /** Standard deviation of those differences where the caller knows it; else the fit finds it from its residuals. */
  readonly precision: number | undefined;
  /** DC resistance read on a meter, with its relative standard deviation. */
  readonly resistance: { readonly ohms: number; readonly precision: number } | undefined;
  /** What of the errors is taken out before they count: levels and delays that nobody knows. */
  readonly free: readonly Free[];
  /** Stretches of the errors, from and to, that follow one another in frequency: how alike neighbours are tells how many count. */
  readonly runs: readonly Stretch[];
  /** Stretches that may be off by more or less than each other, each made of runs; left out: all errors are alike. */
  readonly stretches?: readonly Stretch[] | undefined;
  readonly models: readonly LossModel[];
  /** What the coil is as a rule; left out: as any coil. */
  readonly usual?: UsualCoil | undefined;
  /** Whether the loss is only what is usual, as the measurements say nothing of it. */
  readonly isLossUsual?: boolean | undefined;
  /** What to measure besides, for a refusal. */
  readonly remedy: string;
  /** Called between evaluations; may throw to give the work up. */
  readonly checkpoint: (() => void) | undefined;
}

/** Starting precision, replaced by what the residuals say. */
const ASSUMED_PRECISION = 0.005;
const REWEIGHTINGS = 3;
/** Enough to see which starting point leads anywhere. */
const TRIAL_ITERATIONS = 5;

/** Where a coil's values were found, and what is fitted along beside it. */
interface Found extends Solution {
  readonly beside: Float64Array;
}

/** One loss model fitted, for better or worse. */
export interface Attempt {
  readonly shape: CoilShape;
  readonly solution: Found;
  readonly errors: Float64Array;
  /** Standard deviation of one error. */
  readonly sigma: number;
  /** Of the errors, how many count as independent. */
  readonly share: number;
  readonly parts: readonly Weighed[];
  /** Sum of squares of what the values are off from what is known beside the measurements. */
  readonly unusual: number;
  readonly unknowns: number;
  readonly degreesOfFreedom: number;
}

export function exponentials(logs: Float64Array): Float64Array {
  return logs.map(Math.exp);
}

/** Errors by their standard deviations, what is free taken out; and how far what is known beside them is off, by its own. */
function rowsOf(problem: FitProblem, shape: CoilShape, logs: Float64Array, along: Float64Array, sigma: Float64Array) {
  problem.checkpoint?.();
  const parameters = exponentials(logs);
  const data = problem.errors(shape.coilOf(parameters), along).map((error, i) => error / sigma[i]!);
  const beside = [
    ...problem.free.map((each) => takeOut(data, each, sigma)),
    ...unusualness(shape, parameters, problem.usual ?? ANY_COIL),
    ...(problem.resistance ? [(logs[0]! - Math.log(problem.resistance.ohms)) / problem.resistance.precision] : []),
    ...(problem.beside ?? []).map((deviation, k) => along[k]! / deviation),
  ];
  return { data, beside };
}

/** Of a square matrix the part of its first rows and columns. */
const corner = (matrix: Float64Array, whole: number, size: number) =>
  Float64Array.from({ length: size * size }, (_, i) => matrix[Math.floor(i / size) * whole + (i % size)]!);

type Start = Pick<Found, "parameters" | "beside">;

function solve(problem: FitProblem, shape: CoilShape, from: Start, sigma: Float64Array, iterations?: number): Found {
  const size = from.parameters.length;
  const { covariance, parameters, ...solution } = leastSquares(
    (all) => {
      const { data, beside } = rowsOf(problem, shape, all.slice(0, size), all.slice(size), sigma);
      const rows = new Float64Array(data.length + beside.length);
      rows.set(data);
      rows.set(beside, data.length);
      return rows;
    },
    Float64Array.of(...from.parameters, ...from.beside),
    iterations,
  );
  return {
    ...solution,
    parameters: parameters.slice(0, size),
    beside: parameters.slice(size),
    covariance: covariance && corner(covariance, parameters.length, size),
  };
}

function bestStart(problem: FitProblem, shape: CoilShape, sigma: Float64Array): Found {
  const beside = new Float64Array(problem.beside?.length ?? 0);
  const starts = startsFor(shape.loss, problem.guess).map((start) => Float64Array.from(start, Math.log));
  const tried = starts.map((parameters) => solve(problem, shape, { parameters, beside }, sigma, TRIAL_ITERATIONS));
  const best = tried.reduce((least, solution) => (solution.chiSquare < least.chiSquare ? solution : least));
  return solve(problem, shape, best, sigma);
}

const sumOfSquares = (values: Iterable<number>) => {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
};

/** Fits one loss model. @returns null where it has more values than there are measurements */
export function attempt(problem: FitProblem, loss: LossModel): Attempt | null {
  const shape = coilShape(loss);
  const asTold = new Float64Array(problem.beside?.length ?? 0);
  const count = problem.errors(shape.coilOf(startsFor(loss, problem.guess)[0]!), asTold).length;
  const values = problem.isLossUsual ? shape.names.filter((name) => !name.startsWith("loss")) : shape.names;
  const unknowns = values.length + problem.free.length - (problem.resistance ? 1 : 0);
  const degreesOfFreedom = count - unknowns;
  if (degreesOfFreedom < (problem.precision === undefined ? 1 : 0)) return null;
  const { precision, expected = { beside: new Float64Array(count).fill(1) } } = problem;
  const stretches: readonly Stretch[] = (precision === undefined && problem.stretches) || [[0, count]];
  const sigma = Float64Array.from(
    expected.stated ?? expected.beside.map((each) => each * (precision ?? ASSUMED_PRECISION)),
  );
  let solution = bestStart(problem, shape, sigma);
  const rowsNow = () => rowsOf(problem, shape, solution.parameters, solution.beside, sigma);
  const errorsNow = () => rowsNow().data.map((each, i) => each * sigma[i]!);
  const weighedNow = () => weighed(errorsNow(), expected, stretches, problem.runs, degreesOfFreedom);
  for (let round = 0; precision === undefined && round < REWEIGHTINGS; round++) {
    for (const part of weighedNow())
      sigma.set(
        part.sigma.map((each) => each / Math.sqrt(part.share)),
        part.stretch[0],
      );
    solution = solve(problem, shape, solution, sigma);
  }
  const parts = weighedNow();
  const whole =
    precision === undefined ? { sigma: usualSigma(parts), share: shareOf(parts) } : { sigma: precision, share: 1 };
  const unusual = sumOfSquares(rowsNow().beside);
  return { shape, solution, errors: errorsNow(), ...whole, parts, unusual, unknowns, degreesOfFreedom };
}

/** Standard errors of the parameters' logarithms; Infinity where the data tell nothing. */
export function relativeErrors({ shape, solution }: Attempt): number[] {
  const size = shape.names.length;
  return shape.names.map((_, i) => Math.sqrt(solution.covariance?.[i * size + i] ?? Number.POSITIVE_INFINITY));
}
