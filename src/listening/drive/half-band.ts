import { windowedSinc } from "./low-pass.ts";

/** Steep enough for what is left below a quarter of the band, 100 dB down; written out below, for loops so short cost twice the time. */
const PAIRS = 7;
const LENGTH = 4 * PAIRS - 1;
/** By how much a half-band is late, in samples of the higher of its rates. */
export const HALF_BAND_DELAY = 2 * PAIRS - 1;

/**
 * A half-band low-pass: in its middle a half, beside it only every second tap is not 0, and those mirror each other. These are one
 * side of them, from the end to the middle.
 */
function sideOf(): readonly number[] {
  const taps = windowedSinc(LENGTH, 0.5, HALF_BAND_DELAY);
  const side = Array.from({ length: PAIRS }, (_, i) => taps[2 * i]!);
  const sum = side.reduce((total, tap) => total + tap, 0);
  return side.map((tap) => tap / (4 * sum));
}

const [C0, C1, C2, C3, C4, C5, C6] = sideOf() as [number, number, number, number, number, number, number];

/** A line of samples of which the last ones are remembered from block to block. */
class Remembered {
  readonly samples: Float64Array;
  readonly #length: number;

  constructor(length: number, most: number) {
    this.#length = length;
    this.samples = new Float64Array(length + most);
  }

  take(block: Float64Array, count: number): void {
    this.samples.set(block.subarray(0, count), this.#length);
  }

  keep(count: number): void {
    this.samples.copyWithin(0, count, count + this.#length);
  }
}

/** Twice as many samples. */
export class HalfBandUp {
  readonly #line: Remembered;

  /** @param most samples of a block that goes in */
  constructor(most: number) {
    this.#line = new Remembered(2 * PAIRS - 1, most);
  }

  run(input: Float64Array, count: number, output: Float64Array): void {
    this.#line.take(input, count);
    const { samples: x } = this.#line;
    for (let n = 0; n < count; n++) {
      const outer = C0 * (x[n]! + x[n + 13]!) + C1 * (x[n + 1]! + x[n + 12]!) + C2 * (x[n + 2]! + x[n + 11]!);
      const inner = C3 * (x[n + 3]! + x[n + 10]!) + C4 * (x[n + 4]! + x[n + 9]!) + C5 * (x[n + 5]! + x[n + 8]!);
      output[2 * n] = 2 * (outer + inner + C6 * (x[n + 6]! + x[n + 7]!));
      output[2 * n + 1] = x[n + 7]!;
    }
    this.#line.keep(count);
  }
}

/** Half as many samples. */
export class HalfBandDown {
  readonly #line: Remembered;

  /** @param most samples of a block that comes out */
  constructor(most: number) {
    this.#line = new Remembered(LENGTH - 1, 2 * most);
  }

  /** @param count of samples that come out */
  run(input: Float64Array, count: number, output: Float64Array): void {
    this.#line.take(input, 2 * count);
    const { samples: x } = this.#line;
    for (let n = 0, m = 0; n < count; n++, m += 2) {
      const outer = C0 * (x[m]! + x[m + 26]!) + C1 * (x[m + 2]! + x[m + 24]!) + C2 * (x[m + 4]! + x[m + 22]!);
      const inner = C3 * (x[m + 6]! + x[m + 20]!) + C4 * (x[m + 8]! + x[m + 18]!) + C5 * (x[m + 10]! + x[m + 16]!);
      output[n] = outer + inner + C6 * (x[m + 12]! + x[m + 14]!) + 0.5 * x[m + 13]!;
    }
    this.#line.keep(2 * count);
  }
}
