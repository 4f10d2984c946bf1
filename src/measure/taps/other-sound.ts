import { faultAt, type PresolderError } from "../../errors.ts";
import { findMarks } from "../recording/find-marks.ts";
import { MARKS } from "../signal/layout.ts";
import { TAP_RATE_HZ } from "./tap-signal.ts";

const BLOCK_SECONDS = 0.05;
/** −50 dB of full scale: quieter than any tap that is of use. */
const LOUD = 0.003;
/** 20 dB under the loudest. */
const NEAR = 0.1;
/** Three taps sound for half a second of four; a string, music or a sweep most of the time. */
const STEADY_SHARE = 0.5;
/** Of a take that is looked through for the measuring signal's marks; it lasts a quarter of a minute. */
const LONGEST_SECONDS = 60;

/** Of the time, how much is nearly as loud as the loudest; 0 where nothing is loud. @param samples without hum */
function steadiness(samples: Float64Array | Float32Array, rateHz: number): number {
  const length = Math.round(BLOCK_SECONDS * rateHz);
  const levels = Array.from({ length: Math.floor(samples.length / length) }, (_, k) => {
    let sum = 0;
    for (let n = k * length; n < (k + 1) * length; n += 1) sum += samples[n]! ** 2;
    return Math.sqrt(sum / length);
  });
  const loudest = Math.max(0, ...levels);
  return loudest < LOUD ? 0 : levels.filter((level) => level > NEAR * loudest).length / levels.length;
}

/**
 * Why a take is of something else than taps; undefined where it may be of taps.
 * @param clear the take at `TAP_RATE_HZ`, without hum
 */
export function otherSound(
  path: string,
  sampleRateHz: number,
  samples: Float32Array,
  clear: Float64Array,
): PresolderError | undefined {
  const isSignal =
    samples.length <= LONGEST_SECONDS * sampleRateHz &&
    steadiness(samples, sampleRateHz) > STEADY_SHARE &&
    findMarks(samples, sampleRateHz).length >= MARKS.length;
  if (!isSignal && steadiness(clear, TAP_RATE_HZ) <= STEADY_SHARE) return undefined;
  const what = isSignal
    ? "holds the measuring signal, not taps; send it to /api/measure or /api/examine"
    : "sounds most of the time, as music or a ringing string does, and taps do not; damp the strings, switch everything else off";
  return faultAt(
    "DATA_INSUFFICIENT",
    path,
    `${what}, and tap each row of poles three times with a screwdriver or a key`,
  );
}
