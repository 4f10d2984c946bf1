import type { PresolderError } from "../../errors.ts";
import { faultAt } from "../../errors.ts";
import { findMarks } from "../recording/find-marks.ts";
import { MARKS } from "../signal/layout.ts";
import type { TapTake } from "./hear-taps.ts";
import { TAP_RATE_HZ } from "./tap-signal.ts";

const BLOCK_SECONDS = 0.05;
/** −50 dB of full scale: quieter than any tap that is of use. */
const LOUD = 0.003;
/** 20 dB under the loudest. */
const NEAR = 0.1;
/** Three taps sound for half a second of four; a string, music or a sweep most of the time. */
const STEADY_SHARE = 0.5;

/** Of the time, how much is nearly as loud as the loudest; 0 where nothing is loud. @param samples without hum */
function steadiness(samples: Float64Array): number {
  const length = Math.round(BLOCK_SECONDS * TAP_RATE_HZ);
  const levels = Array.from({ length: Math.floor(samples.length / length) }, (_, k) => {
    const block = samples.subarray(k * length, (k + 1) * length);
    return Math.sqrt(block.reduce((sum, each) => sum + each * each, 0) / length);
  });
  const loudest = Math.max(0, ...levels);
  return loudest < LOUD ? 0 : levels.filter((level) => level > NEAR * loudest).length / levels.length;
}

/**
 * Why a take is of something else than taps; undefined where it may be of taps.
 * @param clear the take at `TAP_RATE_HZ`, without hum
 */
export function otherSound(
  { path, sampleRateHz }: TapTake,
  samples: Float32Array,
  clear: Float64Array,
): PresolderError | undefined {
  if (steadiness(clear) <= STEADY_SHARE) return undefined;
  const isSignal = findMarks(samples, sampleRateHz).length >= MARKS.length;
  const what = isSignal
    ? "holds the measuring signal, not taps; send it to /api/measure or /api/examine"
    : "sounds most of the time, as music or a ringing string does, and taps do not; damp the strings, switch everything else off";
  return faultAt(
    "DATA_INSUFFICIENT",
    path,
    `${what}, and tap each row of poles three times with a screwdriver or a key`,
  );
}
