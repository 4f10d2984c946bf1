import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import { REFERENCE_CELSIUS } from "./copper.ts";
import type { MeterModel } from "./meter-model.ts";
import { meterNotes } from "./own/meter-notes.ts";
import { MeterFace } from "./own/on-meter.ts";
import type { OwnMeter } from "./own/own-meter.ts";
import { type ProbeRequest, planOf, type ReadingPlan } from "./reading-plan.ts";
import { type Reading, ReadingTaker } from "./reading-taker.ts";
import { standingReadings } from "./standing-readings.ts";

export interface ToleranceUsed {
  readonly part: string;
  readonly coil?: string;
  readonly tolerance: number;
}

export interface MeterReadings {
  readonly temperature: number;
  readonly readings: readonly Reading[];
  readonly probes: readonly Reading[];
  /** Parts whose tolerance is common practice because the build names none. */
  readonly defaultTolerances: readonly ToleranceUsed[];
  /** Where the person said which meter is theirs. */
  readonly meter?: { readonly words: string; readonly notes: readonly string[] };
}

interface ReadingOptions {
  readonly celsius?: number;
  readonly probes?: readonly ProbeRequest[];
  readonly meter?: OwnMeter | undefined;
}

function defaultTolerances({ parts }: MeterModel): ToleranceUsed[] {
  return parts.parameters
    .filter((parameter) => parameter.tolerance.byDefault)
    .map(({ part, coil, tolerance }) => ({
      part,
      ...(coil === undefined ? {} : { coil }),
      tolerance: tolerance.fraction,
    }));
}

/**
 * What an ohmmeter must read on a sound guard, nothing plugged in.
 * @param celsius temperature of the coils, whose resistance the build gives at 20 °C
 * @param meter the person's own, where they said which
 */
export function meterReadings(
  build: Build,
  { celsius = REFERENCE_CELSIUS, probes = [], meter }: ReadingOptions = {},
): MeterReadings {
  const taker = new ReadingTaker(build, celsius);
  const controls = new Controls(build);
  const face = meter && new MeterFace(build, meter);
  const take = (plan: ReadingPlan) => {
    const reading = taker.take(plan);
    return face ? face.show(plan, reading) : reading;
  };
  return {
    temperature: celsius,
    readings: standingReadings(build).map(take),
    probes: probes.map((probe, index) => take(planOf(build, controls, probe, `probes.${index}`))),
    defaultTolerances: defaultTolerances(taker.model),
    ...(meter ? { meter: { words: meter.words, notes: meterNotes(meter, build, celsius) } } : {}),
  };
}
