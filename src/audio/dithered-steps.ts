import { ditherSeed, nextDitherState } from "./dither.ts";
import { CHUNK, DITHER, RESULTS, SAMPLES } from "./simd/kernels.ts";
import { type SoundKernel, soundKernel } from "./simd/sound-kernel.ts";

/** Of a 16-bit file: full scale is ±32768 of them. */
const STEPS = 32_768;
const VECTOR = 4;

/**
 * A channel times `gain` in steps of a 16-bit file, dithered as `createDither` does and held at the ends; by plain arithmetic where
 * `kernel` is null, which differs by one step at most. Every `stride`th of `steps` from `channel` on is written.
 *
 * @returns whether every sample is finite
 */
export function writeDithered(
  steps: Int16Array,
  samples: Float32Array,
  gain: number,
  { channel, stride }: { readonly channel: number; readonly stride: number },
  kernel: SoundKernel | null = soundKernel,
): boolean {
  const place = { channel, stride };
  return kernel ? quickly(steps, samples, gain, place, kernel) : plainly(steps, samples, gain, place);
}

interface Place {
  readonly channel: number;
  readonly stride: number;
}

/** The dither in line, since a call of `createDither`'s for every sample takes half as long again. */
function plainly(steps: Int16Array, samples: Float32Array, gain: number, { channel, stride }: Place): boolean {
  const scale = gain * STEPS;
  let state = ditherSeed(channel);
  let before = 0;
  let sum = 0;
  for (let n = 0, at = channel; n < samples.length; n++, at += stride) {
    state = nextDitherState(state);
    const number = state * 2 ** -32;
    const value = samples[n]! * scale + (number - before);
    before = number;
    sum += value;
    steps[at] = Math.max(-STEPS, Math.min(STEPS - 1, Math.round(value)));
  }
  return Number.isFinite(sum);
}

function eightOn(state: number): number {
  let later = state;
  for (let step = 0; step < 2 * VECTOR; step++) later = nextDitherState(later);
  return later;
}

/** Sets the kernel's vectors for the beginning of a channel. */
function prepare({ integers, floats }: SoundKernel, channel: number, gain: number): void {
  let state = ditherSeed(channel);
  for (let lane = 0; lane < 2 * VECTOR; lane++) {
    state = nextDitherState(state);
    integers[DITHER.states / 4 + lane] = state;
  }
  const spread = (numbers: Float32Array | Int32Array, address: number, value: number) =>
    void numbers.fill(value, address / 4, address / 4 + VECTOR);
  spread(integers, DITHER.increment, eightOn(0));
  spread(integers, DITHER.multiplier, eightOn(1) - eightOn(0));
  spread(floats, DITHER.before, 0);
  spread(floats, DITHER.check, 0);
  spread(floats, DITHER.zero, 0);
  spread(floats, DITHER.scale, gain * STEPS);
  spread(floats, DITHER.numberScale, 2 ** -32);
}

function quickly(
  steps: Int16Array,
  samples: Float32Array,
  gain: number,
  { channel, stride }: Place,
  kernel: SoundKernel,
): boolean {
  prepare(kernel, channel, gain);
  const { floats, shorts, dithered } = kernel;
  for (let start = 0; start < samples.length; start += CHUNK) {
    const chunk = samples.subarray(start, start + CHUNK);
    floats.set(chunk, SAMPLES / 4);
    // The kernel takes eight at a time, and what it reads beyond the last is not written.
    floats.fill(0, SAMPLES / 4 + chunk.length, SAMPLES / 4 + Math.ceil(chunk.length / 8) * 8);
    dithered(SAMPLES, SAMPLES + 4 * chunk.length, RESULTS);
    const results = shorts.subarray(RESULTS / 2, RESULTS / 2 + chunk.length);
    if (stride === 1) steps.set(results, start);
    else for (let n = 0; n < results.length; n++) steps[(start + n) * stride + channel] = results[n]!;
  }
  return floats.subarray(DITHER.check / 4, DITHER.check / 4 + VECTOR).every((sum) => sum === 0);
}
