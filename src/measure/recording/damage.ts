import { BODIES, QUIET, type Stretch } from "../signal/layout.ts";
import { type Clock, recordedSeconds } from "./clock.ts";

/** Samples at the very top more than chance, and of those within a fiftieth of it: a sine's own top has a ninth there at 16 bits, and a loop through no hiss at all repeats its top each second. */
const FLAT_SAMPLES = 8;
const FLAT_SHARE = 0.5;
const NEAR_TOP = 0.98;
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

const top = (samples: Float32Array) => samples.reduce((most, each) => Math.max(most, Math.abs(each)), 0);

const countFrom = (samples: Float32Array, least: number) =>
  samples.reduce((count, each) => (Math.abs(each) >= least ? count + 1 : count), 0);

function isClipped(pass: Float32Array): boolean {
  const highest = top(pass);
  if (highest < CLIPPED_FROM) return false;
  const flat = countFrom(pass, highest);
  return flat >= FLAT_SAMPLES && flat >= FLAT_SHARE * countFrom(pass, NEAR_TOP * highest);
}

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
