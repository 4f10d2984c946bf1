import { isJoint, isOpen, JOINT_UP_TO_OHMS, OPEN_FROM_OHMS } from "../../meter/hobby-meter.ts";
import { chiSquareTail } from "./chi-square.ts";
import type { Evidence } from "./evidence.ts";
import { type Expected, JointNormal, NONE_FREE } from "./joint-normal.ts";
import type { Observation } from "./observation.ts";
import type { Prediction } from "./predictor.ts";

/** How often a reading is a slip: a wrong range, a probe that missed. */
const LOG_SLIP = Math.log(1e-5);
/** A slip may show anything from an ohm to 20 MΩ, evenly on a log scale. */
const LOG_SLIP_DENSITY = LOG_SLIP - Math.log(Math.log(OPEN_FROM_OHMS / JOINT_UP_TO_OHMS));
/** Less likely than this to lie above the range's end, a reading shown as over the range is one that is not explained. */
const CERTAINLY_BELOW = 1e-3;
/** Beyond the edge of its tolerances by more than this many standard deviations of the meter, a guard cannot show a reading. */
export const METER_DEVIATIONS = 3;

/** Readings, by index, as a prediction lets them be weighed. */
interface Sorted {
  /** Of ohms on both sides, near enough to be compared. */
  readonly finite: readonly number[];
  /** Known only to lie above the end of the meter's range. */
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

  /**
   * @param tolerances fraction for each unknown that is a part
   * @param unknownCount parts, then wipers
   */
  constructor(observations: readonly Observation[], tolerances: readonly number[], unknownCount: number) {
    this.#observations = observations;
    this.#normal = new JointNormal(observations, tolerances, unknownCount);
  }

  /**
   * @param around deviations at which `prediction` was made and is linear
   * @param free the unknown, if any, that no tolerance binds
   */
  weigh(prediction: Prediction, around?: Float64Array, free = NONE_FREE): Evidence {
    const expected: Expected = { prediction, around, free };
    const { finite, censored, missed } = this.#sort(expected);
    const log = missed.reduce((sum, index) => sum + this.#logSlip(index), 0);
    const { density, chiSquare, degrees, deviations } = this.#normal.solve(expected, finite);
    const chances = censored.map((index) => this.#normal.chanceAbove(expected, index, deviations));
    const below = censored.filter((_, at) => chances[at]! < CERTAINLY_BELOW);
    const aboveLog = chances.reduce(
      (sum, chance) => sum + Math.max(LOG_SLIP, Math.log(Math.max(chance, Number.MIN_VALUE))),
      0,
    );
    return {
      log: log + density + aboveLog,
      fit: chiSquareTail(chiSquare, degrees) * Math.exp(LOG_SLIP * missed.length + aboveLog),
      missed: [...missed, ...below],
      oddest: this.#normal.oddest(expected, finite, deviations),
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
      if (isJoint(ohms) || isOpen(ohms) || isJoint(from) || isOpen(to)) return true;
      const slack = METER_DEVIATIONS * this.#normal.spreadOfWipers(nominal, index);
      return Math.log(from / ohms) <= slack && Math.log(ohms / to) <= slack;
    });
  }

  #sort(expected: Expected): Sorted {
    const [finite, censored, missed]: [number[], number[], number[]] = [[], [], []];
    for (const [index, { ohms, above }] of this.#observations.entries()) {
      const predicted = expected.prediction.ohms[index]!;
      const isValue = !isOpen(predicted) && !isJoint(predicted);
      if (isValue && above !== undefined) censored.push(index);
      else if (isValue && this.#showsValue(index) && this.#normal.reaches(expected, index)) finite.push(index);
      else if (isValue || !agrees(predicted, ohms)) missed.push(index);
    }
    return { finite, censored, missed };
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

/** Whether a reading is what an open circuit or a joint shows. */
function agrees(predicted: number, ohms: number): boolean {
  return isOpen(predicted) ? ohms === Number.POSITIVE_INFINITY : isJoint(ohms);
}
