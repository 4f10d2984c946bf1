import { BODIES, QUIET, type Stretch } from "../signal/layout.ts";
import { type Clock, recordedSeconds } from "./clock.ts";

/** Samples at the very top more than chance, and of those within a fiftieth of it: a sine's own top has a ninth there at 16 bits, and a loop through no hiss at all repeats its top each second. */
const FLAT_SAMPLES = 8;
const FLAT_SHARE = 0.5;
const NEAR_TOP = 0.98;
/** An input that clips before its converter has hiss on its flat tops: so many samples, and of those so near the top. A sine has half of them there. */
const HISSING_SAMPLES = 200;
const HISSING_SHARE = 0.75;
const HISSING_TOP = 0.99;
const HISSING_NEAR = 0.96;
/** Under this much of full scale a flat top is quiet sound in few bits. */
const CLIPPED_FROM = 0.1;
/** So many equal samples in a row amid the signal are a dropout that a program filled. */
const STUCK_SAMPLES = 64;

/** The samples of a stretch of the signal, counted from the mark before a pass. */
export function stretchOf(samples: Float32Array, rate: number, clock: Clock, pass: number, { from, seconds }: Stretch) {
  const first = Math.ceil(recordedSeconds(clock, pass, from) * rate);
  return samples.subarray(first, Math.floor(recordedSeconds(clock, pass, from + seconds) * rate));
}

function longestRun(samples: Float32Array, like: (sample: number, before: number) => boolean): number {
  let [longest, run] = [0, 0];
  for (let n = 1; n < samples.length; n += 1) {
    run = like(samples[n]!, samples[n - 1]!) ? run + 1 : 0;
    longest = Math.max(longest, run + 1);
  }
  return longest;
}

type Side = 1 | -1;

const top = (samples: Float32Array, side: Side) =>
  samples.reduce((most, each) => Math.max(most, side * each), Number.NEGATIVE_INFINITY);

const countFrom = (samples: Float32Array, side: Side, least: number) =>
  samples.reduce((count, each) => (side * each >= least ? count + 1 : count), 0);

/** Each side by itself: integers reach one step further below than above. */
function isFlat(pass: Float32Array, side: Side): boolean {
  const highest = top(pass, side);
  if (highest < CLIPPED_FROM) return false;
  const from = (share: number) => countFrom(pass, side, share * highest);
  const [flat, hissing] = [from(1), from(HISSING_TOP)];
  if (flat >= FLAT_SAMPLES && flat >= FLAT_SHARE * from(NEAR_TOP)) return true;
  return hissing >= HISSING_SAMPLES && hissing >= HISSING_SHARE * from(HISSING_NEAR);
}

const isClipped = (pass: Float32Array) => isFlat(pass, 1) || isFlat(pass, -1);

const isStuck = (pass: Float32Array) => longestRun(pass, (sample, before) => sample === before) >= STUCK_SAMPLES;

/** What spoils a pass: a sample lost, a dropout filled, a clipped peak; undefined for a good one. */
export type Damage = "lost" | "stuck" | "clipped";

export function damageOf(samples: Float32Array, rate: number, clock: Clock, index: number): Damage | undefined {
  const pass = stretchOf(samples, rate, clock, index, BODIES[index]!);
  if (!clock.whole[index]) return "lost";
  if (isClipped(pass)) return "clipped";
  return isStuck(pass) ? "stuck" : undefined;
}

/** The stretch in which nothing is played. */
export function quietOf(samples: Float32Array, rate: number, clock: Clock): Float32Array {
  return stretchOf(samples, rate, clock, 0, QUIET);
}
