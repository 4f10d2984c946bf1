import { isJoint, isOpen, JOINT_UP_TO_OHMS, OPEN_FROM_OHMS } from "../../meter/hobby-meter.ts";
import { chiSquareTail } from "./chi-square.ts";
import type { Evidence } from "./evidence.ts";
import { type Expected, JointNormal, NONE_FREE, type Unknown } from "./joint-normal.ts";
import type { Observation } from "./observation.ts";
import { isOfPotEnd, logAtPotEnd } from "./pot-end-chance.ts";
import type { Prediction } from "./predictor.ts";

/** How often a reading is a slip: a wrong range, a probe that missed. */
const LOG_SLIP = Math.log(1e-5);
/** A slip may show anything from an ohm to 20 MΩ, evenly on a log scale. */
const LOG_SLIP_DENSITY = LOG_SLIP - Math.log(Math.log(OPEN_FROM_OHMS / JOINT_UP_TO_OHMS));
/** Less likely than this to lie beyond what the range could show, a reading shown as beyond it is one that is not explained. */
const CERTAINLY_WITHIN = 1e-3;
/** An end of a track reads the same within this, in ln R, in whatever position of a switch. */
const SAME_END_LOG_RATIO = 0.7;
/** Beyond the edge of its tolerances by more than this many standard deviations of the meter, a guard cannot show a reading. */
export const METER_DEVIATIONS = 3;

/** Readings, by index, as a prediction lets them be weighed. */
interface Sorted {
  /** Of ohms on both sides, near enough to be compared. */
  readonly finite: readonly number[];
  /** Of the end of a pot's track, which may be anything between two bounds; ln of each one's density. */
  readonly atEnds: readonly number[];
  /** Known only to lie above the end of the meter's range, or too far under it to be told from none. */
  readonly censored: readonly number[];
  /** Slips, if the prediction is right. */
  readonly missed: readonly number[];
}

/**
 * How likely the readings are under a hypothesis: their exact joint density with the parts' deviations integrated out, so that
 * a fault that would make almost any reading likely is not preferred to one that predicts it.
 */
export class Likelihood {
  readonly #observations: readonly Observation[];
  readonly #normal: JointNormal;

  /** @param unknownCount parts, then wipers */
  constructor(observations: readonly Observation[], parts: readonly Unknown[], unknownCount: number) {
    this.#observations = observations;
    this.#normal = new JointNormal(observations, parts, unknownCount);
  }

  /**
   * @param around deviations at which `prediction` was made and is linear
   * @param free the unknown, if any, that no tolerance binds
   */
  weigh(prediction: Prediction, around?: Float64Array, free = NONE_FREE): Evidence {
    const expected: Expected = { prediction, around, free };
    const { finite, atEnds, censored, missed } = this.#sort(expected);
    const logOf = (sum: number, each: number) => sum + each;
    const log = missed.map((index) => this.#logSlip(index)).reduce(logOf, 0) + atEnds.reduce(logOf, 0);
    const { density, chiSquare, degrees, deviations } = this.#normal.solve(expected, finite);
    const chances = censored.map((index) => this.#normal.chanceBeyond(expected, index, deviations));
    const unlikely = censored.filter((_, at) => chances[at]! < CERTAINLY_WITHIN);
    const beyondLog = chances.reduce(
      (sum, chance) => sum + Math.max(LOG_SLIP, Math.log(Math.max(chance, Number.MIN_VALUE))),
      0,
    );
    return {
      log: log + density + beyondLog,
      fit: chiSquareTail(chiSquare, degrees) * Math.exp(LOG_SLIP * missed.length + beyondLog),
      missed: [...missed, ...unlikely],
      oddest: this.#normal.oddest(expected, finite, deviations),
      deviations,
    };
  }

  /**
   * Whether every reading lies between what all parts low and all parts high would show, `METER_DEVIATIONS` of the meter's error
   * and of the wipers' place aside. Resistance between two points never falls when any one resistance rises (Rayleigh).
   */
  isWithin(nominal: Prediction, low: Float64Array, high: Float64Array): boolean {
    return this.#observations.every(({ ohms, above, below, logError }, index) => {
      if (nominal.upTo[index] !== nominal.ohms[index]) return true;
      const [from, to] = [low[index]!, high[index]!];
      if (above !== undefined) return to >= above * (1 - METER_DEVIATIONS * logError);
      if (below !== undefined) return from <= below * (1 + METER_DEVIATIONS * logError);
      if (isJoint(ohms) || isOpen(ohms) || isJoint(from) || isOpen(to)) return true;
      const slack = METER_DEVIATIONS * this.#normal.spreadOfWipers(nominal, index);
      return Math.log(from / ohms) <= slack && Math.log(ohms / to) <= slack;
    });
  }

  /** How far apart two guards read that both have something to show in a reading, as chi-square; Infinity where only one has. */
  separation(from: Prediction, to: Prediction): number {
    const readings: number[] = [];
    for (const [index, a] of from.ohms.entries()) {
      const b = to.ohms[index]!;
      const isEnd = isOfPotEnd(a, from.upTo[index]!) && isOfPotEnd(b, to.upTo[index]!);
      if (a === b || isEnd || (isOpen(a) && isOpen(b)) || (isJoint(a) && isJoint(b))) continue;
      if (isOpen(a) || isOpen(b) || isJoint(a) || isJoint(b)) return Number.POSITIVE_INFINITY;
      readings.push(index);
    }
    if (readings.length === 0) return 0;
    return this.#normal.separation({ prediction: from, around: undefined, free: NONE_FREE }, readings, to.ohms);
  }

  #sort(expected: Expected): Sorted {
    const [finite, atEnds, censored, missed]: [number[], number[], number[], number[]] = [[], [], [], []];
    const { prediction } = expected;
    const known: EndReading[] = [];
    for (const [index, observation] of this.#observations.entries()) {
      const { ohms, above, below } = observation;
      const [predicted, upTo] = [prediction.ohms[index]!, prediction.upTo[index]!];
      if (isOfPotEnd(predicted, upTo)) {
        const log = logAtPotEnd(observation, predicted, upTo);
        if (log === undefined) missed.push(index);
        // The same end read again shows the same: it tells nothing twice.
        else if (!known.some((end) => isSameEnd(end, { upTo, ohms }))) atEnds.push(log);
        if (log !== undefined) known.push({ upTo, ohms });
        continue;
      }
      const isValue = !isOpen(predicted) && !isJoint(predicted);
      if (isValue && (above ?? below) !== undefined) censored.push(index);
      else if (isValue && this.#showsValue(index) && this.#normal.reaches(expected, index)) finite.push(index);
      else if (isValue || !agrees(predicted, ohms)) missed.push(index);
    }
    return { finite, atEnds, censored, missed };
  }

  /** Whether the meter showed ohms that are neither a joint nor open. */
  #showsValue(index: number): boolean {
    const { ohms } = this.#observations[index]!;
    return ohms < Number.POSITIVE_INFINITY && !isJoint(ohms);
  }

  #logSlip(index: number): number {
    return this.#showsValue(index) ? LOG_SLIP_DENSITY : LOG_SLIP;
  }
}

interface EndReading {
  readonly upTo: number;
  readonly ohms: number;
}

/** Whether two readings are of the same end of a track, which shows the same both times. */
function isSameEnd(a: EndReading, b: EndReading): boolean {
  const isNear = (x: number, y: number) => (isJoint(x) && isJoint(y)) || Math.abs(Math.log(x / y)) < SAME_END_LOG_RATIO;
  return isNear(a.upTo, b.upTo) && isNear(Math.max(a.ohms, 1), Math.max(b.ohms, 1));
}

/** Whether a reading is what an open circuit or a joint shows. */
function agrees(predicted: number, ohms: number): boolean {
  return isOpen(predicted) ? ohms === Number.POSITIVE_INFINITY : isJoint(ohms);
}
