import type { Build } from "../../build-file/schema.ts";
import { Controls } from "../../build-file/settings.ts";
import { REFERENCE_CELSIUS } from "./copper.ts";
import type { MeterModel } from "./meter-model.ts";
import { type ProbeRequest, planOf } from "./reading-plan.ts";
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
 */
export function meterReadings(
  build: Build,
  { celsius = REFERENCE_CELSIUS, probes = [] }: { celsius?: number; probes?: readonly ProbeRequest[] } = {},
): MeterReadings {
  const taker = new ReadingTaker(build, celsius);
  const controls = new Controls(build);
  return {
    temperature: celsius,
    readings: standingReadings(build).map((plan) => taker.take(plan)),
    probes: probes.map((probe, index) => taker.take(planOf(build, controls, probe, `probes.${index}`))),
    defaultTolerances: defaultTolerances(taker.model),
  };
}
