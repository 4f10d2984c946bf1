import { windowedSinc } from "./low-pass.ts";

/**
 * A half-band low-pass of 4·pairs − 1 taps: in its middle a half, beside it only every second tap is not 0, and those mirror each
 * other. These are one side of them, from the end to the middle.
 */
function sideOf(pairs: number): Float64Array {
  const length = 4 * pairs - 1;
  const taps = windowedSinc(length, 0.5, 2 * pairs - 1);
  const side = Float64Array.from({ length: pairs }, (_, i) => taps[2 * i]!);
  const sum = side.reduce((total, tap) => total + tap, 0);
  return side.map((tap) => tap / (4 * sum));
}

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

/** Twice as many samples, 2·pairs − 1 of them late. */
export class HalfBandUp {
  readonly #side: Float64Array;
  readonly #line: Remembered;

  /** @param most samples of a block that goes in */
  constructor(pairs: number, most: number) {
    this.#side = sideOf(pairs).map((tap) => 2 * tap);
    this.#line = new Remembered(2 * pairs - 1, most);
  }

  run(input: Float64Array, count: number, output: Float64Array): void {
    const side = this.#side;
    const pairs = side.length;
    this.#line.take(input, count);
    const { samples } = this.#line;
    for (let n = 0; n < count; n++) {
      let sum = 0;
      for (let i = 0, early = n, late = n + 2 * pairs - 1; i < pairs; i++)
        sum += side[i]! * (samples[early++]! + samples[late--]!);
      output[2 * n] = sum;
      output[2 * n + 1] = samples[n + pairs]!;
    }
    this.#line.keep(count);
  }
}

/** Half as many samples, 2·pairs − 1 of those that went in late. */
export class HalfBandDown {
  readonly #side: Float64Array;
  readonly #line: Remembered;

  /** @param most samples of a block that comes out */
  constructor(pairs: number, most: number) {
    this.#side = sideOf(pairs);
    this.#line = new Remembered(4 * pairs - 2, 2 * most);
  }

  /** @param count of samples that come out */
  run(input: Float64Array, count: number, output: Float64Array): void {
    const side = this.#side;
    const pairs = side.length;
    this.#line.take(input, 2 * count);
    const { samples } = this.#line;
    for (let n = 0; n < count; n++) {
      let sum = 0.5 * samples[2 * n + 2 * pairs - 1]!;
      for (let i = 0, early = 2 * n, late = 2 * n + 4 * pairs - 2; i < pairs; i++, early += 2, late -= 2)
        sum += side[i]! * (samples[early]! + samples[late]!);
      output[n] = sum;
    }
    this.#line.keep(2 * count);
  }
}
