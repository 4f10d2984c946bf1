import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import { capitalised } from "../../english.ts";
import { faultAt } from "../../errors.ts";
import { isLoneOne } from "../meter/own/display.ts";
import { endOf } from "../meter/own/meter-error.ts";
import type { OwnMeter } from "../meter/own/own-meter.ts";
import { rangeFor } from "../meter/own/range-for.ts";
import type { ReadingPlan } from "../meter/reading-plan.ts";
import { type ProbeRequest, planOf } from "../meter/reading-plan.ts";
import type { Symptom } from "../symptoms/witness.ts";
import { readingName } from "./answer/reading-words.ts";
import { type Observation, observe, observeAbove } from "./likelihood/observation.ts";
import type { JointAge } from "./priors/fault-shares.ts";

/** What the person measured. */
export interface MeasuredReading extends ProbeRequest {
  /** What the person calls it. */
  readonly label?: string | undefined;
  /** Ohms; null where the meter showed an open circuit on its highest range. */
  readonly ohms?: number | null | undefined;
  /** Whether it showed that it was over the range it stood on; `ohms` is null then. */
  readonly isOver?: boolean | undefined;
  /** The end of the range in ohms that the meter stood on. */
  readonly range?: number | undefined;
  /** Instead of `ohms`: the end of the range, in ohms, that the meter was over. */
  readonly above?: number | undefined;
  /** Between what the display wandered; without them, or where they do not hold `ohms`, the meter's error is 1 %. */
  readonly low?: number | null | undefined;
  readonly high?: number | null | undefined;
}

export interface DiagnoseRequest {
  readonly readings: readonly MeasuredReading[];
  readonly symptoms?: readonly Symptom[];
  /** °C of the coils. */
  readonly temperature?: number | undefined;
  /** What the readings were taken with. */
  readonly meter?: OwnMeter | undefined;
  /** How old the joints are: made just now and not proven yet, or of a guard that has worked before. */
  readonly joints?: JointAge | undefined;
}

/** Whether the display cannot have wandered between these bounds and shown this: they are another reading's, or a tolerance. */
function areForeignBounds({ ohms, low, high }: MeasuredReading): boolean {
  if (ohms === undefined || low === undefined || high === undefined) return false;
  if (ohms === null || low === null || high === null) return ohms !== null || (low !== null && high !== null);
  return ohms < low || ohms > high;
}

function checkBounds({ low, high }: MeasuredReading, path: string): void {
  if (typeof low === "number" && typeof high === "number" && low > high)
    throw faultAt("REQUEST_INVALID", `${path}.low`, `is ${low} ohms; expected at most the high of ${high} ohms`);
}

/** Where and in which settings each reading was taken. @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field */
export function plansOf(build: Build, readings: readonly MeasuredReading[]): ReadingPlan[] {
  const controls = new Controls(build);
  return readings.map((reading, index) => {
    checkBounds(reading, `readings.${index}`);
    const plan = planOf(build, controls, reading, `readings.${index}`);
    return { ...plan, label: reading.label || readingName(plan, controls) };
  });
}

/**
 * The end of the range that a display was over; undefined where its meter found the range and the circuit is open. A person who
 * sets ranges and says none stood on the one for a sound guard.
 */
function overWhat(
  { ohms, range, isOver }: MeasuredReading,
  meter: OwnMeter | undefined,
  sound: () => number | null,
): number | undefined {
  const stoodOn = range ?? meter?.range;
  if (isOver) {
    if (stoodOn !== undefined || meter === undefined) return stoodOn;
    return meter.ranging === "auto" ? undefined : endOf({ ...meter, range: rangeFor(meter, sound()) });
  }
  return meter && typeof ohms === "number" && isLoneOne(meter, stoodOn, ohms) ? stoodOn : undefined;
}

/**
 * What the meter showed in a reading, and how far it may be off.
 * @param sound what a sound guard reads there, ohms; null where open
 */
export function observed(reading: MeasuredReading, own: OwnMeter | undefined, sound: () => number | null): Observation {
  const { ohms = null, low, high, range = own?.range } = reading;
  const meter = own && range !== undefined && ohms !== null ? { ...own, range } : own;
  const above = reading.above ?? overWhat(reading, meter, sound);
  if (above !== undefined) return observeAbove(above, meter);
  return areForeignBounds(reading) ? observe(ohms, undefined, undefined, meter) : observe(ohms, low, high, meter);
}

/** What of a reading was taken otherwise than it was written. */
export function noteOn(reading: MeasuredReading, plan: ReadingPlan, meter?: OwnMeter): string[] {
  if (!areForeignBounds(reading)) return [];
  const [ohms, low, high] = [reading.ohms, reading.low, reading.high].map((each) => each ?? "open");
  return [
    `${capitalised(plan.label)}: ${ohms} is not between low (${low}) and high (${high}), so these are not what the display wandered between; the meter's error is taken ${meter ? "by its kind" : "as 1 %"}.`,
  ];
}
