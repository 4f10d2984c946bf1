import { METER_TOLERANCE } from "../tolerance.ts";
import type { Prediction } from "./predictor.ts";

/** What the person's meter showed. */
export interface Observation {
  /** Ohms; Infinity where the meter showed an open circuit. */
  readonly ohms: number;
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

export interface Evidence {
  /** ln P(readings | this fault). */
  readonly log: number;
  /** Readings that this fault cannot explain. */
  readonly misses: number;
  /** Most likely ln (value / nominal) of each unknown. */
  readonly deviations: Float64Array;
}

function isJoint(ohms: number): boolean {
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
  readonly #matrix: Float64Array;
  readonly #right: Float64Array;

  /** @param tolerances fraction for each unknown that is a part; wipers follow with `WIPER_LOGIT_DEVIATION` */
  constructor(observations: readonly Observation[], tolerances: readonly number[], unknownCount: number) {
    this.#observations = observations;
    this.#size = unknownCount;
    this.#priorVariance = Float64Array.from({ length: unknownCount }, (_, index) =>
      index < tolerances.length ? Math.max(tolerances[index]!, 1e-4) ** 2 / 3 : WIPER_LOGIT_DEVIATION ** 2,
    );
    this.#matrix = new Float64Array(unknownCount * unknownCount);
    this.#right = new Float64Array(unknownCount);
  }

  /** @param around deviations at which `prediction` was made and is linear */
  weigh(prediction: Prediction, around?: Float64Array): Evidence {
    let log = 0;
    let misses = 0;
    const finite: number[] = [];
    for (const [index, { ohms, logError }] of this.#observations.entries()) {
      const predicted = prediction.ohms[index]!;
      const open = predicted >= OPEN_FROM_OHMS;
      const agrees = open ? ohms === Number.POSITIVE_INFINITY : isJoint(predicted) ? isJoint(ohms) : undefined;
      const comparable = agrees === undefined && ohms < Number.POSITIVE_INFINITY && !isJoint(ohms);
      if (comparable && this.#reaches(prediction, index, ohms, logError, around)) finite.push(index);
      else if (agrees !== true) {
        misses++;
        log += ohms < Number.POSITIVE_INFINITY && !isJoint(ohms) ? LOG_SLIP_DENSITY : LOG_SLIP;
      }
    }
    const { density, deviations } = this.#jointDensity(prediction, finite, around);
    return { log: log + density, misses, deviations };
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
  #reaches(prediction: Prediction, index: number, ohms: number, logError: number, around?: Float64Array): boolean {
    const row = index * this.#size;
    let variance = logError * logError;
    for (let k = 0; k < this.#size; k++) variance += prediction.slopes[row + k]! ** 2 * this.#priorVariance[k]!;
    return this.#residual(prediction, index, ohms, around) ** 2 < SLIP_DEVIATIONS ** 2 * variance;
  }

  /** ln of the joint normal density of the finite readings in ln R, and the most likely deviations. */
  #jointDensity(prediction: Prediction, finite: readonly number[], around?: Float64Array) {
    const size = this.#size;
    const matrix = this.#matrix.fill(0);
    const right = this.#right.fill(0);
    let log = -0.5 * finite.length * Math.log(2 * Math.PI);
    for (let k = 0; k < size; k++) {
      matrix[k * size + k] = 1 / this.#priorVariance[k]!;
      log -= 0.5 * Math.log(this.#priorVariance[k]!);
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
    return { density: log - 0.5 * (logDeterminant + squares - explained), deviations };
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
