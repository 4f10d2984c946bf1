import { leastSquares } from "../../choice/fit/least-squares.ts";
import { t95 } from "../../choice/fit/student-t.ts";
import type { DistanceLaw } from "./distance-law.ts";
import { heightCounts } from "./height-counts.ts";
import { misfits } from "./predictor.ts";
import type { Recorded } from "./recorded.ts";

/** The laws of all movable pickups, with what the recordings leave open. */
export interface FittedLaws {
  readonly laws: readonly DistanceLaw[];
  /** Standard deviation of one string's level in one recording, in dB. */
  readonly sigmaDb: number;
  readonly degreesOfFreedom: number;
  /** ± this many standard errors hold 95 %. */
  readonly t: number;
  /** Each law's exponent at the middle of the gaps recorded: n·gap/(gap + offset), which is told even where n and offset are not. */
  readonly exponents: readonly number[];
  /** Their standard errors; Infinity where the recordings do not tell them. */
  readonly exponentErrors: readonly number[];
  /** Directions in which the laws may be off, one standard error long each and independent of each other. */
  readonly deviations: readonly (readonly DistanceLaw[])[];
}

/** What the exponents begin at; the problem is straight in them where pickups sound alone. */
const FIRST_EXPONENT = 1.5;
/** With fewer heights an offset cannot be told from an exponent. */
const HEIGHTS_FOR_OFFSET = 3;
/** Precision that no hand has; keeps perfect data from a division by zero. */
const LEAST_SIGMA_DB = 1e-6;
/** Of (least gap + offset) over the least gap: far above it a law is a straight line in dB, whatever its offset. */
const LONGEST_LOG = 4;
const SHORTEST_LOG = -1;

/** A pickup's least gap among the recordings, and the middle of all in the logarithm. */
interface Span {
  readonly least: number;
  readonly middle: number;
}

function spansOf({ pickups, observations }: Recorded): Span[] {
  return pickups.map((_, index) => {
    const seen = observations.flatMap(({ gaps }) => [gaps[index]!.bassMetres, gaps[index]!.trebleMetres]);
    const least = Math.min(...seen);
    return { least, middle: Math.sqrt(least * Math.max(...seen)) };
  });
}

/**
 * Exponents at the middle gaps, then the logarithm of (least gap + offset) over the least gap for each pickup with an offset: in
 * these the recordings tell one hardly less for not telling the other.
 */
function lawsFrom(parameters: ArrayLike<number>, spans: readonly Span[], withOffset: readonly number[]): DistanceLaw[] {
  return spans.map(({ least, middle }, index) => {
    const at = withOffset.indexOf(index);
    const log = at < 0 ? 0 : Math.min(LONGEST_LOG, Math.max(SHORTEST_LOG, parameters[spans.length + at]!));
    const offsetMetres = least * Math.expm1(log);
    return { exponent: (parameters[index]! * (middle + offsetMetres)) / middle, offsetMetres };
  });
}

/** The mean of each position's string is free, so that it tells nothing of a law. */
function residualsOf(recorded: Recorded, laws: readonly DistanceLaw[]): Float64Array {
  return Float64Array.from(
    misfits(recorded, laws)
      .flat()
      .flatMap((group) => {
        const mean = group.reduce((sum, value) => sum + value, 0) / group.length;
        return group.map((value) => value - mean);
      }),
  );
}

function freeCount({ positions, observations, stringCount }: Recorded): number {
  return stringCount * (observations.length - positions.length);
}

function attempt(recorded: Recorded, withOffset: readonly number[], checkpoint: () => void) {
  const spans = spansOf(recorded);
  const start = Float64Array.from([...spans.map(() => FIRST_EXPONENT), ...withOffset.map(() => 0)]);
  const solution = leastSquares((parameters) => {
    checkpoint();
    return residualsOf(recorded, lawsFrom(parameters, spans, withOffset));
  }, start);
  const free = freeCount(recorded);
  const k = start.length + 1;
  const meanSquare = Math.max(LEAST_SIGMA_DB ** 2, solution.chiSquare / free);
  const correction = free - k - 1 > 0 ? (2 * k * (k + 1)) / (free - k - 1) : Number.POSITIVE_INFINITY;
  return {
    spans,
    withOffset,
    solution,
    degreesOfFreedom: free - start.length,
    aicc: free * Math.log(meanSquare) + 2 * k + correction,
  };
}

type Attempt = ReturnType<typeof attempt>;

/** Offsets one by one, each kept where the corrected Akaike criterion asks for it (Hurvich and Tsai, Biometrika 76, 297, 1989). */
function bestAttempt(recorded: Recorded, checkpoint: () => void): Attempt {
  let best = attempt(recorded, [], checkpoint);
  for (const [pickup, count] of heightCounts(recorded).entries()) {
    if (count < HEIGHTS_FOR_OFFSET) continue;
    const tried = attempt(recorded, [...best.withOffset, pickup], checkpoint);
    if (tried.solution.covariance && tried.aicc < best.aicc) best = tried;
  }
  return best;
}

/** Columns of a matrix L with L·Lᵀ the covariance, by Cholesky; nothing where it is no covariance. */
function independentColumns(covariance: Float64Array, size: number): Float64Array[] {
  const columns = Array.from({ length: size }, () => new Float64Array(size));
  for (let j = 0; j < size; j++) {
    for (let i = j; i < size; i++) {
      let value = covariance[i * size + j]!;
      for (let k = 0; k < j; k++) value -= columns[k]![i]! * columns[k]![j]!;
      columns[j]![i] = i === j ? Math.sqrt(Math.max(0, value)) : columns[j]![j]! > 0 ? value / columns[j]![j]! : 0;
    }
  }
  return columns;
}

/**
 * Fits every movable pickup's law to recordings at several heights at once, so that positions of two pickups tell as well as
 * those of one. @param checkpoint called between evaluations
 */
export function fitLaws(recorded: Recorded, checkpoint: () => void = () => {}): FittedLaws {
  const { solution, spans, withOffset, degreesOfFreedom } = bestAttempt(recorded, checkpoint);
  const { parameters, covariance, chiSquare } = solution;
  const sigmaDb = Math.max(LEAST_SIGMA_DB, Math.sqrt(chiSquare / Math.max(1, degreesOfFreedom)));
  const size = parameters.length;
  const exponentErrors = spans.map((_, index) =>
    covariance ? sigmaDb * Math.sqrt(Math.max(0, covariance[index * size + index]!)) : Number.POSITIVE_INFINITY,
  );
  const deviations = covariance
    ? independentColumns(covariance, size).map((column) =>
        lawsFrom(
          parameters.map((value, index) => value + sigmaDb * column[index]!),
          spans,
          withOffset,
        ),
      )
    : [];
  return {
    laws: lawsFrom(parameters, spans, withOffset),
    sigmaDb,
    degreesOfFreedom,
    t: t95(degreesOfFreedom),
    exponents: Array.from(parameters.subarray(0, spans.length)),
    exponentErrors,
    deviations,
  };
}
