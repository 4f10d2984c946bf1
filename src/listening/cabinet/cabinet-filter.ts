import { faultAt } from "../../errors.ts";
import { filterDelaySamples, type ImpulseResponse } from "../../filter/impulse-response.ts";
import { evenedLevel } from "./evened-level.ts";
import { CABINET_FIELD, type Cabinet } from "./read-cabinet.ts";
import { leadSamples, resampled } from "./resampled.ts";

/**
 * One's own cabinet as a filter at the rate of a sound, at the stated speaker's level; never less late than other filters.
 * @throws PresolderError SOUND_UNUSABLE where it lets nothing of a guitar through
 */
export function cabinetFilter(cabinet: Cabinet, sampleRateHz: number): ImpulseResponse {
  const gain = evenedLevel(cabinet);
  if (gain === undefined) {
    const message = "lets nothing through from 100 Hz to 5 kHz; expected a cabinet's impulse response";
    throw faultAt("SOUND_UNUSABLE", CABINET_FIELD, message);
  }
  const own = resampled(cabinet.samples, cabinet.sampleRateHz, sampleRateHz);
  const lead = leadSamples(cabinet.sampleRateHz, sampleRateHz);
  const delaySamples = Math.max(filterDelaySamples(sampleRateHz), lead);
  const taps = new Float64Array(own.length + delaySamples - lead);
  for (let n = 0; n < own.length; n++) taps[n + delaySamples - lead] = gain * own[n]!;
  return { taps, delaySamples, sampleRateHz };
}
