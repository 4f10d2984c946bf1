import { METER_TOLERANCE } from "../../../build-file/tolerances.ts";
import { chiSquareTail } from "./chi-square.ts";
import type { Prediction } from "./predictor.ts";

/** What the person's meter showed. */
export interface Observation {
  /** Ohms; Infinity where the meter showed an open circuit or was over its range. */
  readonly ohms: number;
  /** The end of the meter's range in ohms, where all that it showed is that the reading lies above. */
  readonly above?: number;
  /** Standard deviation of ln (ohms). */
  readonly logError: number;
}

/** Beyond this a hobby meter shows an open circuit (common practice: 20 MΩ is the highest range). */
export const OPEN_FROM_OHMS = 20e6;
/** Below this a reading is a joint: leads and contacts take up to an ohm or two. */
export const JOINT_UP_TO_OHMS = 3;
const LEADS_ERROR_OHMS = 0.5;
/** How often a reading is a slip: a wrong range, a probe that missed. */
const LOG_SLIP = Math.log(1e-5);
/** A slip may show anything from an ohm to 20 MΩ, evenly on a log scale. */
const LOG_SLIP_DENSITY = LOG_SLIP - Math.log(Math.log(OPEN_FROM_OHMS / JOINT_UP_TO_OHMS));
/** Beyond this many standard deviations a finite reading is a slip and no longer bends the estimate of the parts. */
const SLIP_DEVIATIONS = 6;
/** Less likely than this to lie above the range's end, a reading shown as over the range is one that is not explained. */
const CERTAINLY_BELOW = 1e-3;
/** Beyond the edge of its tolerances by more than this many standard deviations of the meter, a guard cannot show a reading. */
export const METER_DEVIATIONS = 3;
/** Audio tracks differ: standard deviation of the logit of the wiper's fraction (common practice, no source). */
export const WIPER_LOGIT_DEVIATION = 0.3;

/** The observation of a meter; without bounds its error is 1 %, and half an ohm of leads. */
export function observe(ohms: number | null, low?: number | null, high?: number | null): Observation {
  if (ohms === null || ohms >= OPEN_FROM_OHMS) return { ohms: Number.POSITIVE_INFINITY, logError: 0 };
  const own = METER_TOLERANCE + LEADS_ERROR_OHMS / Math.max(ohms, LEADS_ERROR_OHMS);
  if (low === undefined || high === undefined || low === null || high === null || low <= 0)
    return { ohms, logError: own };
  return { ohms, logError: Math.max(Math.log(high / low) / (2 * Math.sqrt(3)), METER_TOLERANCE / 10) };
}

/** The observation of a meter over its range: somewhere above its end, which need not be open. */
export function observeAbove(ohms: number): Observation {
  if (ohms >= OPEN_FROM_OHMS) return { ohms: Number.POSITIVE_INFINITY, logError: 0 };
  return { ohms: Number.POSITIVE_INFINITY, above: ohms, logError: METER_TOLERANCE };
}

/** Probability that a standard normal variable exceeds z. */
function normalTail(z: number): number {
  const half = chiSquareTail(z * z, 1) / 2;
  return z >= 0 ? half : 1 - half;
}

export interface Evidence {
  /** ln P(readings | this fault). */
  readonly log: number;
  /** Probability, 0 to 1, that readings of a guard with this fault lie at least as far from what it predicts as these. */
  readonly fit: number;
  /** Readings, by their index, that this fault cannot explain. */
  readonly missed: readonly number[];
  /** The reading furthest from what the likeliest parts make of it, those missed aside; −1 where none can be compared. */
  readonly oddest: number;
  /** Most likely ln (value / nominal) of each unknown. */
  readonly deviations: Float64Array;
}

/**
 * A part whose value is not the build's: its ln is taken to scatter this far (standard deviation) about the build's value.
 * Windings of common pickups lie within a factor of two of each other (common practice, no source).
 */
export const FREE_VALUE_DEVIATION = 0.7;
/** How far a free value may plausibly lie from where it stands in one step of solving for it. */
const FREE_STEP_DEVIATION = 0.1;
const NONE_FREE = -1;

export function isJoint(ohms: number): boolean {
  return ohms <= JOINT_UP_TO_OHMS;
}

/**
 * Weighs readings against predictions. Parts and wipers deviate as independent normal variables (a uniform tolerance has
 * standard deviation t/√3), each reading with its meter's error on top; to first order in the deviations the readings are then
 * jointly normal in ln R, and what is returned is their exact density with the deviations integrated out, so that a fault that
 * would make almost any reading likely is not preferred to one that predicts it.
 */
export class Scales {
  readonly #observations: readonly Observation[];
  readonly #priorVariance: Float64Array;
  readonly #size: number;
  readonly #partCount: number;
  readonly #matrix: Float64Array;
  readonly #right: Float64Array;

  /** @param tolerances fraction for each unknown that is a part; wipers follow with `WIPER_LOGIT_DEVIATION` */
  constructor(observations: readonly Observation[], tolerances: readonly number[], unknownCount: number) {
    this.#observations = observations;
    this.#size = unknownCount;
    this.#partCount = tolerances.length;
    this.#priorVariance = Float64Array.from({ length: unknownCount }, (_, index) =>
      index < tolerances.length ? Math.max(tolerances[index]!, 1e-4) ** 2 / 3 : WIPER_LOGIT_DEVIATION ** 2,
    );
    this.#matrix = new Float64Array(unknownCount * unknownCount);
    this.#right = new Float64Array(unknownCount);
  }

  /**
   * @param around deviations at which `prediction` was made and is linear
   * @param free the unknown, if any, that no tolerance binds
   */
  weigh(prediction: Prediction, around?: Float64Array, free = NONE_FREE): Evidence {
    let log = 0;
    const missed: number[] = [];
    const finite: number[] = [];
    const censored: number[] = [];
    for (const [index, { ohms, above }] of this.#observations.entries()) {
      const predicted = prediction.ohms[index]!;
      if (above !== undefined && predicted < OPEN_FROM_OHMS && !isJoint(predicted)) {
        censored.push(index);
        continue;
      }
      const open = predicted >= OPEN_FROM_OHMS;
      const agrees = open ? ohms === Number.POSITIVE_INFINITY : isJoint(predicted) ? isJoint(ohms) : undefined;
      const comparable = agrees === undefined && ohms < Number.POSITIVE_INFINITY && !isJoint(ohms);
      if (comparable && this.#reaches(prediction, index, around, free)) finite.push(index);
      else if (agrees !== true) {
        missed.push(index);
        log += ohms < Number.POSITIVE_INFINITY && !isJoint(ohms) ? LOG_SLIP_DENSITY : LOG_SLIP;
      }
    }
    const { density, chiSquare, degrees, deviations } = this.#jointDensity(prediction, finite, around, free);
    let aboveLog = 0;
    for (const index of censored) {
      const chance = this.#chanceAbove(prediction, index, deviations, around);
      if (chance < CERTAINLY_BELOW) missed.push(index);
      aboveLog += Math.max(LOG_SLIP, Math.log(Math.max(chance, Number.MIN_VALUE)));
    }
    const slips = missed.filter((index) => !censored.includes(index)).length;
    const fit = chiSquareTail(chiSquare, degrees) * Math.exp(LOG_SLIP * slips + aboveLog);
    return {
      log: log + density + aboveLog,
      fit,
      missed,
      oddest: this.#oddest(prediction, finite, deviations, around),
      deviations,
    };
  }

  /**
   * Whether every reading lies between what all parts low and all parts high would show, `METER_DEVIATIONS` of the meter's error
   * and of the wipers' place aside. Resistance between two points never falls when any one resistance rises (Rayleigh).
   */
  isWithin(nominal: Prediction, low: Float64Array, high: Float64Array): boolean {
    return this.#observations.every(({ ohms, above, logError }, index) => {
      const [from, to] = [low[index]!, high[index]!];
      if (above !== undefined) return to >= above * (1 - METER_DEVIATIONS * logError);
      if (isJoint(ohms) || ohms >= OPEN_FROM_OHMS || isJoint(from) || to >= OPEN_FROM_OHMS) return true;
      let variance = logError * logError;
      for (let k = this.#partCount; k < this.#size; k++)
        variance += (nominal.slopes[index * this.#size + k]! * WIPER_LOGIT_DEVIATION) ** 2;
      const slack = METER_DEVIATIONS * Math.sqrt(variance);
      return Math.log(from / ohms) <= slack && Math.log(ohms / to) <= slack;
    });
  }

  /**
   * How likely the reading lies above the end of the meter's range: its ln is normal about what the likeliest parts make of it,
   * with the tolerances' own variance, which other readings can only narrow.
   */
  #chanceAbove(prediction: Prediction, index: number, deviations: Float64Array, around?: Float64Array): number {
    const { above, logError } = this.#observations[index]!;
    let left = this.#residual(prediction, index, above!, around);
    let variance = logError * logError;
    for (let k = 0; k < this.#size; k++) {
      const slope = prediction.slopes[index * this.#size + k]!;
      left -= slope * deviations[k]!;
      variance += slope * slope * this.#priorVariance[k]!;
    }
    return normalTail(left / Math.sqrt(variance));
  }

  #oddest(prediction: Prediction, finite: readonly number[], deviations: Float64Array, around?: Float64Array): number {
    let [oddest, furthest] = [-1, -1];
    for (const index of finite) {
      const { ohms, logError } = this.#observations[index]!;
      let left = this.#residual(prediction, index, ohms, around);
      for (let k = 0; k < this.#size; k++) left -= prediction.slopes[index * this.#size + k]! * deviations[k]!;
      if (Math.abs(left) / logError > furthest) [oddest, furthest] = [index, Math.abs(left) / logError];
    }
    return oddest;
  }

  #residual(prediction: Prediction, index: number, ohms: number, around?: Float64Array): number {
    let residual = Math.log(ohms / prediction.ohms[index]!);
    if (around) {
      const row = index * this.#size;
      for (let k = 0; k < this.#size; k++) residual += prediction.slopes[row + k]! * around[k]!;
    }
    return residual;
  }

  /** Whether tolerances and the meter's error can plausibly bring the prediction to the reading. */
  #reaches(prediction: Prediction, index: number, around: Float64Array | undefined, free: number): boolean {
    const { ohms, logError } = this.#observations[index]!;
    const row = index * this.#size;
    let variance = logError * logError;
    for (let k = 0; k < this.#size; k++) {
      const own = k === free ? FREE_STEP_DEVIATION ** 2 : this.#priorVariance[k]!;
      variance += prediction.slopes[row + k]! ** 2 * own;
    }
    let residual = this.#residual(prediction, index, ohms, around);
    // A free value is looked for about where it stands, not about the build's.
    if (free !== NONE_FREE && around) residual -= prediction.slopes[row + free]! * around[free]!;
    return residual ** 2 < SLIP_DEVIATIONS ** 2 * variance;
  }

  /** ln of the joint normal density of the finite readings in ln R, and the most likely deviations. */
  #jointDensity(prediction: Prediction, finite: readonly number[], around: Float64Array | undefined, free: number) {
    const size = this.#size;
    const matrix = this.#matrix.fill(0);
    const right = this.#right.fill(0);
    let log = -0.5 * finite.length * Math.log(2 * Math.PI);
    for (let k = 0; k < size; k++) {
      const variance = k === free ? FREE_VALUE_DEVIATION ** 2 : this.#priorVariance[k]!;
      matrix[k * size + k] = 1 / variance;
      log -= 0.5 * Math.log(variance);
    }
    let squares = 0;
    for (const index of finite) {
      const { ohms, logError } = this.#observations[index]!;
      const weight = 1 / (logError * logError);
      const residual = this.#residual(prediction, index, ohms, around);
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
    if (free === NONE_FREE) return { density, chiSquare, degrees: finite.length, deviations };
    // A value solved from the readings uses one of them up, and how far it lies from the build's is no misfit.
    const ofFree = (deviations[free]! / FREE_VALUE_DEVIATION) ** 2;
    return { density, chiSquare: chiSquare - ofFree, degrees: Math.max(0, finite.length - 1), deviations };
  }
}

/** Solves A x = b by Cholesky, A given in its lower half and overwritten; also ln det A and bᵀA⁻¹b. */
function solveCholesky(matrix: Float64Array, right: Float64Array, size: number, x: Float64Array) {
  let logDeterminant = 0;
  let explained = 0;
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = matrix[row * size + column]!;
      for (let k = 0; k < column; k++) sum -= matrix[row * size + k]! * matrix[column * size + k]!;
      matrix[row * size + column] = column === row ? Math.sqrt(sum) : sum / matrix[column * size + column]!;
    }
    const diagonal = matrix[row * size + row]!;
    logDeterminant += 2 * Math.log(diagonal);
    let sum = right[row]!;
    for (let k = 0; k < row; k++) sum -= matrix[row * size + k]! * x[k]!;
    x[row] = sum / diagonal;
    explained += x[row]! * x[row]!;
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = x[row]!;
    for (let k = row + 1; k < size; k++) sum -= matrix[k * size + row]! * x[k]!;
    x[row] = sum / matrix[row * size + row]!;
  }
  return { logDeterminant, explained };
}
