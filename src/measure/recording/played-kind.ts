import { BODIES } from "../signal/layout.ts";
import type { SignalKind } from "../signal/measuring-signal.ts";
import type { Clock } from "./clock.ts";
import { quietOf, stretchOf } from "./damage.ts";

/** A sweep is still far down after so much of its time; tones sound all the while. */
const EARLY_SHARE = 0.2;
/** Of the high sound that an even spread would put into that share of the time. */
const SPREAD = 0.5;
/** Power over the quiet stretch's, below which noise hides which it is. */
const CLEAR = 10;

/** Mean square of the steps from sample to sample: high sound, with little of hum in it. */
function steps(samples: Float32Array): number {
  let sum = 0;
  for (let n = 1; n < samples.length; n += 1) sum += (samples[n]! - samples[n - 1]!) ** 2;
  return sum / Math.max(1, samples.length - 1);
}

/** Which of the two signals a recording holds; undefined where noise lies over it. */
export function playedKind(samples: Float32Array, rate: number, clock: Clock): SignalKind | undefined {
  const index = Math.max(0, clock.whole.indexOf(true));
  const { from, seconds } = BODIES[index]!;
  const whole = steps(stretchOf(samples, rate, clock, index, { from, seconds }));
  if (whole < CLEAR * steps(quietOf(samples, rate, clock))) return undefined;
  const early = steps(stretchOf(samples, rate, clock, index, { from, seconds: EARLY_SHARE * seconds }));
  return early < SPREAD * whole ? "sweep" : "multitone";
}
