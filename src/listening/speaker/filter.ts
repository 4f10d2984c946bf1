import { type ImpulseResponse, impulseResponse } from "../../filter/impulse-response.ts";
import { speakerTransfer } from "./response.ts";

/**
 * The stated speaker as an FIR filter: within 0.1 dB of `speakerDecibels` from 20 Hz to 18 kHz at 44.1 kHz and above, its delay as
 * that of every filter.
 */
export function speakerFilter(sampleRateHz: number): ImpulseResponse {
  return impulseResponse(speakerTransfer, sampleRateHz);
}
