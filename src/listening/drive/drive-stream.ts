import { EDGE_DOWN, EDGE_UP } from "./edge-filters.ts";
import { Eightfold } from "./eightfold.ts";
import type { DriveLaw } from "./law.ts";

/** A line of samples and a filter over it. */
class FilteredLine {
  readonly #taps: Float64Array;
  readonly #line: Float64Array;

  constructor(taps: Float64Array, most: number) {
    this.#taps = taps;
    this.#line = new Float64Array(taps.length - 1 + most);
  }

  take(count: number, sampleAt: (n: number) => number): void {
    const past = this.#taps.length - 1;
    for (let n = 0; n < count; n++) this.#line[past + n] = sampleAt(n);
  }

  at(n: number): number {
    let sum = 0;
    for (let i = 0, late = n + this.#taps.length - 1; i < this.#taps.length; i++)
      sum += this.#taps[i]! * this.#line[late--]!;
    return sum;
  }

  keep(count: number): void {
    this.#line.copyWithin(0, count, count + this.#taps.length - 1);
  }
}

/** The same as `driven`, block by block as a live sound comes. */
export class DriveStream {
  readonly #up: readonly FilteredLine[];
  readonly #down: readonly FilteredLine[];
  readonly #eightfold: Eightfold;
  readonly #twice: Float64Array;

  /** @param most samples of a block */
  constructor(law: DriveLaw, most: number) {
    this.#up = EDGE_UP.map((taps) => new FilteredLine(taps, most));
    this.#down = EDGE_DOWN.map((taps) => new FilteredLine(taps, most));
    this.#eightfold = new Eightfold(law, 2 * most);
    this.#twice = new Float64Array(2 * most);
  }

  /** @param output as long as the input, and may be the same */
  run(input: Float32Array, output: Float32Array): void {
    const count = input.length;
    const twice = this.#twice;
    for (const [phase, line] of this.#up.entries()) {
      line.take(count, (n) => input[n]!);
      for (let n = 0; n < count; n++) twice[2 * n + phase] = line.at(n);
      line.keep(count);
    }
    this.#eightfold.run(twice, 2 * count);
    for (const [phase, line] of this.#down.entries()) line.take(count, (n) => twice[2 * n + phase]!);
    for (let n = 0; n < count; n++) output[n] = this.#down.reduce((sum, line) => sum + line.at(n), 0);
    for (const line of this.#down) line.keep(count);
  }
}
