import { chiSquareTail } from "./chi-square.ts";
import { solveCholesky } from "./cholesky.ts";
import type { Observation } from "./observation.ts";
import { potEndDeviation } from "./pot-end-chance.ts";
import type { Prediction } from "./predictor.ts";

/** Audio tracks differ: standard deviation of the logit of the wiper's fraction (common practice, no source). */
const WIPER_LOGIT_DEVIATION = 0.3;
/** Beyond this many standard deviations a finite reading is a slip and no longer bends the estimate of the parts. */
const SLIP_DEVIATIONS = 6;
/**
 * A part whose value is not the build's: its ln is taken to scatter this far (standard deviation) about the build's value.
 * Windings of common pickups lie within a factor of two of each other (common practice, no source).
 */
export const FREE_PART_DEVIATION = 0.7;
/** How far a free value may plausibly lie from where it stands in one step of solving for it. */
const FREE_STEP_DEVIATION = 0.1;
/** No unknown is free of its tolerance. */
export const NONE_FREE = -1;

/** Readings that a hypothesis predicts, linear in the unknowns' deviations. */
export interface Expected {
  readonly prediction: Prediction;
  /** Deviations at which the prediction was made; left out: nominal parts. */
  readonly around?: Float64Array | undefined;
  /** The unknown that no tolerance binds, or `NONE_FREE`. */
  readonly free: number;
}

/** What is not known of a part: its tolerance as a fraction, and how far its ln scatters where no tolerance binds it. */
export interface Unknown {
  readonly tolerance: number;
  readonly freeDeviation: number;
}

interface Solution {
  /** ln of the joint density of the finite readings in ln R. */
  readonly density: number;
  readonly chiSquare: number;
  readonly degrees: number;
  /** Most likely ln (value / nominal) of each unknown. */
  readonly deviations: Float64Array;
}

/** Probability that a standard normal variable exceeds z. */
function normalTail(z: number): number {
  const half = chiSquareTail(z * z, 1) / 2;
  return z >= 0 ? half : 1 - half;
}

/**
 * Readings in ln R as jointly normal variables: parts and wipers deviate as independent normal variables (a uniform tolerance
 * has standard deviation t/√3), each reading with its meter's error on top, all to first order in the deviations.
 */
export class JointNormal {
  readonly #observations: readonly Observation[];
  readonly #priorVariance: Float64Array;
  readonly #freeDeviations: readonly number[];
  readonly #size: number;
  readonly #partCount: number;
  readonly #matrix: Float64Array;
  readonly #right: Float64Array;

  /** @param unknownCount parts, then wipers */
  constructor(observations: readonly Observation[], parts: readonly Unknown[], unknownCount: number) {
    this.#observations = observations;
    this.#size = unknownCount;
    this.#partCount = parts.length;
    this.#freeDeviations = parts.map(({ freeDeviation }) => freeDeviation);
    this.#priorVariance = Float64Array.from({ length: unknownCount }, (_, index) =>
      index < parts.length ? Math.max(parts[index]!.tolerance, 1e-4) ** 2 / 3 : WIPER_LOGIT_DEVIATION ** 2,
    );
    this.#matrix = new Float64Array(unknownCount * unknownCount);
    this.#right = new Float64Array(unknownCount);
  }

  /** Whether tolerances and the meter's error can plausibly bring the prediction to the reading. */
  reaches(expected: Expected, index: number): boolean {
    const { prediction, around, free } = expected;
    const { ohms } = this.#observations[index]!;
    const logError = this.#errorOf(prediction, index);
    const row = index * this.#size;
    let variance = logError * logError;
    for (let k = 0; k < this.#size; k++) {
      const own = k === free ? FREE_STEP_DEVIATION ** 2 : this.#priorVariance[k]!;
      variance += prediction.slopes[row + k]! ** 2 * own;
    }
    let residual = this.#residual(expected, index, ohms);
    // A free value is looked for about where it stands, not about the build's.
    if (free !== NONE_FREE && around) residual -= prediction.slopes[row + free]! * around[free]!;
    return residual ** 2 < SLIP_DEVIATIONS ** 2 * variance;
  }

  /**
   * How far another guard's readings lie from what is expected, as chi-square: below one or so, parts within tolerance and the
   * meter's error make the one guard of the other.
   */
  separation(expected: Expected, readings: readonly number[], shown: Float64Array): number {
    return this.solve(expected, readings, (index) => shown[index]!).chiSquare;
  }

  /** The exact joint density of some readings with the deviations integrated out, and the most likely deviations. */
  solve(
    expected: Expected,
    readings: readonly number[],
    shown = (index: number) => this.#observations[index]!.ohms,
  ): Solution {
    const { prediction, free } = expected;
    const size = this.#size;
    const matrix = this.#matrix.fill(0);
    const right = this.#right.fill(0);
    let log = -0.5 * readings.length * Math.log(2 * Math.PI);
    for (let k = 0; k < size; k++) {
      const variance = k === free ? this.#freeDeviations[k]! ** 2 : this.#priorVariance[k]!;
      matrix[k * size + k] = 1 / variance;
      log -= 0.5 * Math.log(variance);
    }
    let squares = 0;
    for (const index of readings) {
      const logError = this.#errorOf(prediction, index);
      const weight = 1 / (logError * logError);
      const residual = this.#residual(expected, index, shown(index));
      const row = index * size;
      squares += weight * residual * residual;
      log -= Math.log(logError);
      for (let k = 0; k < size; k++) {
        const slope = prediction.slopes[row + k]!;
        if (slope === 0) continue;
        right[k]! += weight * slope * residual;
        for (let j = 0; j <= k; j++) matrix[k * size + j]! += weight * slope * prediction.slopes[row + j]!;
      }
    }
    const deviations = new Float64Array(size);
    const { logDeterminant, explained } = solveCholesky(matrix, right, size, deviations);
    const chiSquare = squares - explained;
    const density = log - 0.5 * (logDeterminant + chiSquare);
    if (free === NONE_FREE) return { density, chiSquare, degrees: readings.length, deviations };
    // A value solved from the readings uses one of them up, and how far it lies from the build's is no misfit.
    const ofFree = (deviations[free]! / this.#freeDeviations[free]!) ** 2;
    return { density, chiSquare: chiSquare - ofFree, degrees: Math.max(0, readings.length - 1), deviations };
  }

  /**
   * How likely the reading lies above the end of the meter's range, or under what its range could tell from none: its ln is normal
   * about what the likeliest parts make of it, with the tolerances' own variance, which other readings can only narrow.
   */
  chanceBeyond(expected: Expected, index: number, deviations: Float64Array): number {
    const { above, below } = this.#observations[index]!;
    const logError = this.#errorOf(expected.prediction, index);
    const { slopes } = expected.prediction;
    let left = this.#residual(expected, index, (above ?? below)!);
    let variance = logError * logError;
    for (let k = 0; k < this.#size; k++) {
      const slope = slopes[index * this.#size + k]!;
      left -= slope * deviations[k]!;
      variance += slope * slope * this.#priorVariance[k]!;
    }
    const deviation = left / Math.sqrt(variance);
    return normalTail(above === undefined ? -deviation : deviation);
  }

  /** The one of some readings that lies furthest from what the likeliest parts make of it; −1 where there is none. */
  oddest(expected: Expected, readings: readonly number[], deviations: Float64Array): number {
    const { slopes } = expected.prediction;
    let [oddest, furthest] = [-1, -1];
    for (const index of readings) {
      const { ohms } = this.#observations[index]!;
      const logError = this.#errorOf(expected.prediction, index);
      let left = this.#residual(expected, index, ohms);
      for (let k = 0; k < this.#size; k++) left -= slopes[index * this.#size + k]! * deviations[k]!;
      if (Math.abs(left) / logError > furthest) [oddest, furthest] = [index, Math.abs(left) / logError];
    }
    return oddest;
  }

  /** Standard deviation of ln R that the meter and the wipers' places leave, the parts at fixed values. */
  spreadOfWipers(prediction: Prediction, index: number): number {
    const { slopes } = prediction;
    const logError = this.#errorOf(prediction, index);
    let variance = logError * logError;
    for (let k = this.#partCount; k < this.#size; k++)
      variance += (slopes[index * this.#size + k]! * WIPER_LOGIT_DEVIATION) ** 2;
    return Math.sqrt(variance);
  }

  /** Standard deviation of ln R that the meter and the ends of tracks leave. */
  #errorOf({ ohms, upTo }: Prediction, index: number): number {
    return Math.hypot(this.#observations[index]!.logError, potEndDeviation(ohms[index]!, upTo[index]!));
  }

  #residual({ prediction, around }: Expected, index: number, ohms: number): number {
    let residual = Math.log(ohms / prediction.ohms[index]!);
    if (around) {
      const row = index * this.#size;
      for (let k = 0; k < this.#size; k++) residual += prediction.slopes[row + k]! * around[k]!;
    }
    return residual;
  }
}
