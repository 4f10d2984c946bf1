import type { MeasureRequest } from "../../contract/measure/measure.ts";
import { ask } from "../server/client.ts";

export type SignalKind = NonNullable<MeasureRequest["signal"]>;

/** The rates that the service has the signal at, lowest first. */
export const RATES_HZ = [44_100, 48_000, 88_200, 96_000, 176_400, 192_000];

/** From the signal's first sample to its last. */
export const SIGNAL_SECONDS = 16;

/** The measuring signal as a WAV file. */
export async function fetchSignal(kind: SignalKind, sampleRateHz: number): Promise<ArrayBuffer> {
  return (await ask(`/api/sweep.wav?kind=${kind}&rate=${sampleRateHz}`, {})).arrayBuffer();
}
