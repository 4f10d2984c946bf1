import { editModel } from "../../bench/faults/edits/edit-model.ts";
import type { Fault } from "../../bench/faults/fault.ts";
import type { MeterJudge } from "../../bench/faults/judge.ts";
import { chiSquareTail } from "../../bench/faults/likelihood/chi-square.ts";
import { METER_DEVIATIONS } from "../../bench/faults/likelihood/likelihood.ts";
import type { Observation } from "../../bench/faults/likelihood/observation.ts";
import { isOfPotEnd } from "../../bench/faults/likelihood/pot-end-chance.ts";
import type { Prediction } from "../../bench/faults/likelihood/predictor.ts";
import { isJoint, isOpen } from "../../bench/meter/hobby-meter.ts";
import type { Parameter } from "../../bench/meter/resistors.ts";
import { wiperField } from "../model/unknowns.ts";
import { covarianceOf } from "./covariance.ts";
import type { Weighed } from "./weighed.ts";

/** A meter's reading beside what a guard would make the meter read, its parts where the takes have them. */
export interface ForetoldReading {
  /** Ohms; Infinity where open. */
  readonly ohms: number;
  /** How far the reading is off, in standard errors; Infinity where one of both is open, or a joint, and the other is not. */
  readonly off: number;
}

/** Copper some kelvin warmer, and what a model of a guard gets wrong towards direct current, in ln R. */
const SLACK = 0.02;
/** Further off than this, in standard errors, a reading and the takes cannot both be right. */
export const CONTRADICTS = 4;
/** Beyond all errors alike, for a sum of squares. */
const MOST_OFF = 8;

/** Where the fit has a resistance of the meter's model; −1 where the fit knows nothing of it, or a fault's own edit has it already. */
function unknownOf({ departure, point }: Weighed, { part, coil, gang }: Parameter): number {
  const prefix = coil !== undefined ? `coils.${coil}.` : gang !== undefined && gang > 0 ? `gangs.${gang - 1}.` : "";
  const fields = [`${prefix}measured`, `${prefix}resistance`];
  if (departure.freed.some((freed) => freed.part === part && fields.includes(freed.field))) return -1;
  return fields.map((field) => point.unknowns.indexOf(part, field)).find((index) => index >= 0) ?? -1;
}

/** For every row of slopes of the meter's model, the fit's unknown. */
function unknownsFor(judge: MeterJudge, weighed: Weighed, dialsOf: (pot: string) => number): number[] {
  const { parameters, tracks } = judge.weigher.sound.parts;
  const gangs = new Map<string, number>();
  return [
    ...parameters.map((parameter) => unknownOf(weighed, parameter)),
    ...tracks.map(({ pot }) => {
      const gang = gangs.get(pot) ?? 0;
      gangs.set(pot, gang + 1);
      return weighed.point.unknowns.indexOf(pot, wiperField(gang, dialsOf(pot)));
    }),
  ];
}

function deviationOf({ point }: Weighed, index: number): number {
  return index < 0 ? 0 : (point.unknowns.all[index]!.centre ?? 0) + point.values[index]!;
}

function offBy(
  observation: Observation,
  { ohms: foretold, upTo }: { ohms: number; upTo: number },
  error: number,
): number {
  const { ohms, above, below } = observation;
  if (above !== undefined) return Math.max(0, Math.log(above / foretold) / error);
  if (below !== undefined) return isJoint(foretold) ? 0 : Math.max(0, Math.log(foretold / below) / error);
  if (isOfPotEnd(foretold, upTo)) return ohms <= upTo * (1 + METER_DEVIATIONS * error) ? 0 : Number.POSITIVE_INFINITY;
  if (isOpen(foretold) || isOpen(ohms)) return isOpen(foretold) && isOpen(ohms) ? 0 : Number.POSITIVE_INFINITY;
  if (isJoint(foretold) || isJoint(ohms)) return isJoint(foretold) && isJoint(ohms) ? 0 : Number.POSITIVE_INFINITY;
  return Math.abs(Math.log(ohms / foretold)) / error;
}

/** ln R's variance in one reading, of what the takes leave of its parts. */
function varianceOf(
  prediction: Prediction,
  row: number,
  unknowns: readonly number[],
  covariance: Float64Array,
  size: number,
) {
  const at = row * unknowns.length;
  let sum = 0;
  for (const [i, a] of unknowns.entries()) {
    const slope = prediction.slopes[at + i]!;
    if (a < 0 || slope === 0) continue;
    for (const [j, b] of unknowns.entries())
      if (b >= 0) sum += slope * prediction.slopes[at + j]! * covariance[a * size + b]!;
  }
  return Math.max(0, sum);
}

/** What a meter would read of a guard with these faults, as the takes have its parts, and how far the readings are from that. */
export function foretoldReadings(judge: MeterJudge, faults: readonly Fault[], weighed: Weighed): ForetoldReading[] {
  const model = editModel(
    judge.weigher.sound,
    faults.flatMap(({ edits }) => edits),
  );
  const size = weighed.point.values.length;
  const covariance = covarianceOf(weighed.fit.factor, size);
  return judge.plans.map(({ settings }, row): ForetoldReading => {
    const unknowns = unknownsFor(judge, weighed, (pot) => settings.dials[pot] ?? 10);
    const prediction = judge.weigher.foretold(
      model,
      Float64Array.from(unknowns, (index) => deviationOf(weighed, index)),
    );
    const observation = judge.observations[row]!;
    const variance = varianceOf(prediction, row, unknowns, covariance, size);
    const error = Math.hypot(Math.sqrt(variance), observation.logError, SLACK);
    const [ohms, upTo] = [prediction.ohms[row]!, prediction.upTo[row]!];
    return { ohms, off: offBy(observation, { ohms, upTo }, error) };
  });
}

/** How likely readings are this far off or farther, 0 to 1. */
export function readingsFit(readings: readonly ForetoldReading[]): number {
  if (readings.length === 0) return 1;
  const squares = readings.reduce((sum, { off }) => sum + Math.min(off, MOST_OFF) ** 2, 0);
  return chiSquareTail(squares, readings.length);
}
