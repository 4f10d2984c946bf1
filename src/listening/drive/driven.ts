import { createQuickConvolver } from "../../filter/quick-convolve.ts";
import { DRIVE_DELAY_SAMPLES } from "./delay.ts";
import { EDGE_DOWN, EDGE_UP } from "./edge-filters.ts";
import { Eightfold } from "./eightfold.ts";
import { driveLaw } from "./law.ts";

/** Samples of a stretch that comes out at a time: its eightfold never lies in memory as a whole. */
const STRETCH = 65_536;
/** Samples before a stretch that its first one still hears: all filters together. */
const REACH = 2 * DRIVE_DELAY_SAMPLES;
/** Small enough for the first-level cache at eight times the rate. */
const BLOCK = 512;

/** The samples of `input` from `first` on, silence outside it. */
function stretchOf(input: Float32Array, first: number, length: number): Float32Array {
  const stretch = new Float32Array(length);
  const from = Math.max(0, first);
  const to = Math.min(input.length, first + length);
  if (to > from) stretch.set(input.subarray(from, to), from - first);
  return stretch;
}

/** Even and odd samples at twice the rate through the clipper, in place. */
function throughEightfold(even: Float32Array, odd: Float32Array, drive: number): void {
  const eightfold = new Eightfold(driveLaw(drive), 2 * BLOCK);
  const block = new Float64Array(2 * BLOCK);
  for (let start = 0; start < even.length; start += BLOCK) {
    const count = Math.min(BLOCK, even.length - start);
    for (let n = 0; n < count; n++) {
      block[2 * n] = even[start + n]!;
      block[2 * n + 1] = odd[start + n]!;
    }
    eightfold.run(block, 2 * count);
    for (let n = 0; n < count; n++) {
      even[start + n] = block[2 * n]!;
      odd[start + n] = block[2 * n + 1]!;
    }
  }
}

function drivenStretch(stretch: Float32Array, drive: number): Float32Array {
  const up = createQuickConvolver([stretch], EDGE_UP[0].length);
  const [even, odd] = EDGE_UP.map((taps) => up.render([taps]).subarray(0, stretch.length)) as [
    Float32Array,
    Float32Array,
  ];
  throughEightfold(even, odd, drive);
  const longest = Math.max(...EDGE_DOWN.map((taps) => taps.length));
  return createQuickConvolver([even, odd], longest).render(EDGE_DOWN);
}

/**
 * A sound in volts through the driven stage, eight times oversampled: DRIVE_DELAY_SAMPLES late and twice as many samples longer. What
 * folds back of a full-scale 5 kHz at the dial's end stays 80 dB down. @param drive above 0
 */
export function driven(input: Float32Array, drive: number, checkpoint?: () => void): Float32Array {
  const output = new Float32Array(input.length + REACH);
  for (let start = 0; start < output.length; start += STRETCH) {
    checkpoint?.();
    const count = Math.min(STRETCH, output.length - start);
    const stretch = drivenStretch(stretchOf(input, start - REACH, REACH + count), drive);
    output.set(stretch.subarray(REACH, REACH + count), start);
  }
  return output;
}
