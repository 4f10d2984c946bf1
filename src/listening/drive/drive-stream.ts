import { EDGE_DOWN, EDGE_UP } from "./edge-filters.ts";
import { Eightfold } from "./eightfold.ts";
import type { DriveLaw } from "./law.ts";

/** A line of samples and a filter over it. */
class FilteredLine {
  readonly #taps: Float64Array;
  readonly #line: Float64Array;

  constructor(taps: Float64Array, most: number) {
    this.#taps = taps.slice().reverse();
    this.#line = new Float64Array(taps.length - 1 + most);
  }

  /** Takes every `step`th sample of the input from `first` on, and adds each of the outputs to every `step`th of what is there. */
  run(
    input: ArrayLike<number>,
    [first, step]: Every,
    output: Float64Array | Float32Array,
    [outFirst, outStep]: Every,
    count: number,
  ): void {
    const taps = this.#taps;
    const line = this.#line;
    const past = taps.length - 1;
    for (let n = 0; n < count; n++) line[past + n] = input[first + step * n]!;
    for (let n = 0; n < count; n++) {
      let sum = 0;
      for (let i = 0; i <= past; i++) sum += taps[i]! * line[n + i]!;
      output[outFirst + outStep * n]! += sum;
    }
    line.copyWithin(0, count, count + past);
  }
}

/** From which sample on, and by how many each. */
type Every = readonly [first: number, step: number];

const ALL: Every = [0, 1];
const PHASES: readonly Every[] = [
  [0, 2],
  [1, 2],
];

/** The same as `driven`, block by block as a live sound comes. */
export class DriveStream {
  readonly #up: readonly FilteredLine[];
  readonly #down: readonly FilteredLine[];
  readonly #eightfold: Eightfold;
  readonly #twice: Float64Array;
  readonly #once: Float64Array;

  /** @param most samples of a block */
  constructor(law: DriveLaw, most: number) {
    this.#up = EDGE_UP.map((taps) => new FilteredLine(taps, most));
    this.#down = EDGE_DOWN.map((taps) => new FilteredLine(taps, most));
    this.#eightfold = new Eightfold(law, 2 * most);
    this.#twice = new Float64Array(2 * most);
    this.#once = new Float64Array(most);
  }

  /** @param output as long as the input, and may be the same */
  run(input: Float32Array, output: Float32Array): void {
    const count = input.length;
    const twice = this.#twice.fill(0);
    for (const [phase, line] of this.#up.entries()) line.run(input, ALL, twice, PHASES[phase]!, count);
    this.#eightfold.run(twice, 2 * count);
    const once = this.#once.fill(0);
    for (const [phase, line] of this.#down.entries()) line.run(twice, PHASES[phase]!, once, ALL, count);
    output.set(once.subarray(0, count));
  }
}
