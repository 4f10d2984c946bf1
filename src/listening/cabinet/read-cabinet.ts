import { decodeWav } from "../../audio/wav-decode.ts";
import { faultAt, PresolderError } from "../../errors.ts";
import { MAX_CABINET_SECONDS } from "../../limits.ts";

/** The impulse response of one's own cabinet, as it was measured. */
export interface Cabinet {
  readonly sampleRateHz: number;
  readonly samples: Float32Array;
}

/** The field of a request that carries the file. */
export const CABINET_FIELD = "cabinet";

/** Two microphones are heard at once, each half as loud. */
function mixed(channels: readonly Float32Array[]): Float32Array {
  const [first, ...others] = channels as [Float32Array, ...Float32Array[]];
  if (others.length === 0) return first;
  return first.map((value, n) => others.reduce((sum, each) => sum + each[n]!, value) / channels.length);
}

/**
 * @param bytes of a WAV file
 * @throws PresolderError under the path `cabinet`: WAV_INVALID, LIMIT_EXCEEDED where it is longer than MAX_CABINET_SECONDS,
 * SOUND_UNUSABLE where it is silent
 */
export function readCabinet(bytes: Uint8Array): Cabinet {
  try {
    const { sampleRateHz, channels } = decodeWav(bytes, MAX_CABINET_SECONDS);
    return cabinetOf(sampleRateHz, channels);
  } catch (error) {
    // The reader names the field of the calls with one file.
    if (error instanceof PresolderError) throw faultAt(error.code, CABINET_FIELD, error.faults[0]?.message ?? "");
    throw error;
  }
}

/** @throws PresolderError SOUND_UNUSABLE where it is silent, LIMIT_EXCEEDED where it is too long */
export function cabinetOf(sampleRateHz: number, channels: readonly Float32Array[]): Cabinet {
  const samples = mixed(channels);
  const seconds = samples.length / sampleRateHz;
  if (seconds > MAX_CABINET_SECONDS) {
    const message = `lasts ${seconds.toFixed(2)} s; expected at most ${MAX_CABINET_SECONDS} s`;
    throw faultAt("LIMIT_EXCEEDED", CABINET_FIELD, message);
  }
  if (!samples.some((sample) => sample !== 0))
    throw faultAt("SOUND_UNUSABLE", CABINET_FIELD, "is silent; expected a cabinet's impulse response");
  return { sampleRateHz, samples };
}
