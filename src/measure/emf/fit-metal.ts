import type { Checkpoint } from "../../checkpoint.ts";
import { DECISIVE_AICC } from "../../choice/fit/choose-model.ts";
import type { FittedValue } from "../../choice/fit/fitted-value.ts";
import { independentShare } from "../../choice/fit/independent-share.ts";
import { leastSquares, type Solution } from "../../choice/fit/least-squares.ts";
import { t95 } from "../../choice/fit/student-t.ts";
import type { EmfSlope } from "./emf-slope.ts";
import { LAW_SHAPES, leftBy, METAL_LAWS, type Metal, type MetalLaw } from "./metal-law.ts";
import { takerOut } from "./take-out.ts";

export interface ConsideredLaw {
  readonly law: MetalLaw;
  readonly aicc: number;
  readonly usable: boolean;
}

export interface MetalFit {
  readonly law: MetalLaw;
  readonly metals: readonly Metal[];
  readonly values: readonly FittedValue[];
  /** Nepers, root mean square, each point by what it tells. */
  readonly left: number;
  /** By how many of its own standard deviations each direction of the coils' values was moved to suit. */
  readonly moved: readonly number[];
  readonly considered: readonly ConsideredLaw[];
}

/** What two inputs' slopes may differ by, 0.02 dB, in nepers; a judgement, no source. */
const FLOOR = 0.0023;
/** A value with a larger standard error of its logarithm is not told; as in a coil's fit. */
const LARGEST_RELATIVE_ERROR = 0.45;
const REWEIGHTINGS = 2;

/** Enough to see which starting point leads anywhere. */
const TRIAL_ITERATIONS = 5;

interface Attempt {
  readonly law: MetalLaw;
  readonly solution: Solution;
  /** Residuals by the errors that were expected. */
  readonly errors: Float64Array;
  /** By how many standard deviations each direction of the coils' values was moved. */
  readonly moved: Float64Array;
}

const squares = (values: Float64Array) => values.reduce((sum, each) => sum + each * each, 0);

/** Residuals by `sigma`, then the coils' values' own, for the law's logarithms. */
function rowsOf(law: MetalLaw, { frequenciesHz, nepers, moves }: EmfSlope, sigma: readonly number[]) {
  const takeOut = takerOut(sigma, moves);
  return (logs: Float64Array): Float64Array => {
    const left = leftBy(LAW_SHAPES[law].metalsOf(logs.map(Math.exp)), frequenciesHz);
    return takeOut((i) => nepers[i]! - left[i]!);
  };
}

/** With what a straight line leaves of a coil's values moved by a standard deviation: much only on a resonance. */
function expectedOf({ noise, moves }: EmfSlope): number[] {
  return noise.map((each, i) => {
    const bend = moves.reduce((sum, move) => sum + move[i]! ** 2, 0);
    return Math.hypot(each, FLOOR, bend);
  });
}

function bestStart(law: MetalLaw, rows: ReturnType<typeof rowsOf>): Solution {
  return LAW_SHAPES[law].starts
    .map((start) => leastSquares(rows, Float64Array.from(start, Math.log), TRIAL_ITERATIONS))
    .reduce((best, each) => (each.chiSquare < best.chiSquare ? each : best));
}

function attempt(law: MetalLaw, slope: EmfSlope, { checkpoint }: Checkpoint): Attempt {
  const count = slope.nepers.length;
  const expected = expectedOf(slope);
  let sigma = expected;
  let solution = bestStart(law, rowsOf(law, slope, sigma));
  const errorsNow = () => solution.residuals.slice(0, count).map((each, i) => (each * sigma[i]!) / expected[i]!);
  for (let round = 0; round < REWEIGHTINGS; round++) {
    checkpoint();
    const errors = errorsNow();
    const scatter = Math.sqrt(squares(errors) / Math.max(1, count - LAW_SHAPES[law].names.length - 1));
    const factor = Math.max(1, scatter) / Math.sqrt(independentShare(errors, [[0, count]]));
    const widened = expected.map((each) => each * factor);
    solution = leastSquares(rowsOf(law, slope, widened), solution.parameters);
    sigma = widened;
  }
  return { law, solution, errors: errorsNow(), moved: solution.residuals.slice(count) };
}

function relativeErrors({ law, solution }: Attempt): number[] {
  const size = solution.parameters.length;
  return LAW_SHAPES[law].names.map((_, i) =>
    Math.sqrt(solution.covariance?.[i * size + i] ?? Number.POSITIVE_INFINITY),
  );
}

/** Akaike's criterion, corrected for small samples, of as many errors as count as independent. */
function aiccOf({ law, errors, moved }: Attempt, share: number): number {
  const count = share * errors.length;
  const k = LAW_SHAPES[law].names.length + 2;
  return (
    count * Math.log(squares(errors) / errors.length) +
    squares(moved) +
    2 * k +
    (2 * k * (k + 1)) / Math.max(1, count - k - 1)
  );
}

/** A metal that takes less at the highest frequency, 0.5 dB, in nepers, is not told: an exciter over steel makes as much by itself. */
const LEAST_TAKEN = 0.058;

/** Each value told, each metal by what it takes, and a shelf seen to level off: one beyond what was measured is a pole by another name. */
function isTold(made: Attempt, highestHz: number): boolean {
  const { metalsOf } = LAW_SHAPES[made.law];
  const isSeen = metalsOf(made.solution.parameters.map(Math.exp)).every(
    (metal) => leftBy([metal], [highestHz])[0]! <= -LEAST_TAKEN && !("shelf" in metal && metal.shelf > highestHz),
  );
  return isSeen && relativeErrors(made).every((error) => error <= LARGEST_RELATIVE_ERROR);
}

interface Weighed {
  readonly made: Attempt;
  readonly aicc: number;
}

/** The one with the least AICc; but more values are not said by a difference that errors that go together could make. */
function chosenOf(told: readonly Weighed[]): Attempt {
  const count = ({ made }: Weighed) => LAW_SHAPES[made.law].names.length;
  return told.reduce((best, each) => {
    const lead = count(each) > count(best) ? DECISIVE_AICC : 0;
    return each.aicc < best.aicc - lead ? each : best;
  }).made;
}

function valuesOf(made: Attempt, freedom: number): FittedValue[] {
  const errors = relativeErrors(made);
  return LAW_SHAPES[made.law].names.map((name, i) => {
    const value = Math.exp(made.solution.parameters[i]!);
    const relativeError = errors[i]!;
    const reach = Math.exp(t95(freedom) * relativeError);
    return {
      name,
      value,
      relativeError,
      standardError: value * relativeError,
      low: value / reach,
      high: value * reach,
    };
  });
}

/** The root mean square of what is left, in nepers. */
function leftOf({ errors }: Attempt, slope: EmfSlope): number {
  const weights = expectedOf(slope).map((each) => each ** -2);
  return Math.sqrt(squares(errors) / weights.reduce((sum, each) => sum + each, 0));
}

/**
 * Fits what metal takes of an EMF by weighted least squares: nothing, a pole, a shelf, or both, chosen by the data. What the coils'
 * values leave open is fitted along, each direction within its own standard deviation, so that it is in the errors.
 */
export function fitMetal(slope: EmfSlope, context: Checkpoint): MetalFit {
  const made = METAL_LAWS.map((law) => attempt(law, slope, context));
  const best = made.reduce((least, each) => (squares(each.errors) < squares(least.errors) ? each : least));
  const share = independentShare(best.errors, [[0, best.errors.length]]);
  const weighed = made.map((each) => ({
    made: each,
    aicc: aiccOf(each, share),
    usable: isTold(each, Math.max(...slope.frequenciesHz)),
  }));
  const chosen = chosenOf(weighed.filter(({ usable }) => usable));
  const { names, metalsOf } = LAW_SHAPES[chosen.law];
  const values = valuesOf(chosen, slope.nepers.length - names.length - 1);
  return {
    law: chosen.law,
    metals: metalsOf(values.map(({ value }) => value)),
    values,
    left: leftOf(chosen, slope),
    moved: [...chosen.moved],
    considered: weighed.map(({ made: { law }, aicc, usable }) => ({ law, aicc, usable })),
  };
}
