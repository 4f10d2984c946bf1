import { ComplexLu } from "./complex-lu.ts";
import type { Pencil } from "./pencil.ts";

/** Of the two-stage singly diagonal Runge–Kutta method of order 2 that is L-stable (R. Alexander, 1977): 1 − 1/√2. */
const GAMMA = 1 - Math.SQRT1_2;

/** What a source's own current does after its EMF of 1 V is switched on, everything at rest before. */
export class StepResponse {
  readonly #pencil: Pencil;
  readonly #row: number;
  readonly #lu: ComplexLu;
  readonly #nothing: Float64Array;
  #x: Float64Array;

  constructor(pencil: Pencil, source: number) {
    this.#pencil = pencil;
    this.#row = pencil.sourceRow[source]!;
    this.#lu = new ComplexLu(pencil.size);
    this.#nothing = new Float64Array(pencil.size);
    this.#x = new Float64Array(pencil.size);
  }

  /** In the pencil's scale; its sign is that of the source's branch. */
  get current(): number {
    return this.#x[this.#row]!;
  }

  /** Goes on by so many seconds. @returns whether it could: not where the equations have no one solution */
  advance(seconds: number): boolean {
    if (!this.#factor(1, GAMMA * seconds)) return false;
    const x = this.#x;
    const first = this.#slope(x);
    const between = x.map((value, at) => value + (1 - GAMMA) * seconds * first[at]!);
    const second = this.#slope(between);
    this.#x = x.map((value, at) => value + seconds * ((1 - GAMMA) * first[at]! + GAMMA * second[at]!));
    return Number.isFinite(this.current);
  }

  /**
   * Where it ends, and what flows beyond that until then, in ampere seconds of the pencil's scale: (C x' + G x = b) sums up
   * to G ∫(x − x∞) dt = −C x∞. Undefined where it ends nowhere.
   */
  end(): { current: number; charge: number } | undefined {
    // Nearly G alone; what only capacitors reach keeps them as its reference.
    if (!this.#factor(1e-9, 1)) return undefined;
    const rest = this.#driven();
    this.#solve(rest);
    const swept = this.#times(this.#pencil.c, rest).map((value) => -value);
    this.#solve(swept);
    return { current: rest[this.#row]!, charge: swept[this.#row]! };
  }

  #driven(): Float64Array {
    const b = new Float64Array(this.#pencil.size);
    b[this.#row] = -1;
    return b;
  }

  #factor(ofC: number, ofG: number): boolean {
    const { g, c } = this.#pencil;
    const { re, im } = this.#lu;
    for (let at = 0; at < g.length; at++) re[at] = ofC * c[at]! + ofG * g[at]!;
    im.fill(0);
    return this.#lu.factor();
  }

  #solve(b: Float64Array): void {
    this.#lu.solve(b, this.#nothing.fill(0));
  }

  /** x' of a stage from where it stands: (C + γ h G) x' = b − G x. */
  #slope(x: Float64Array): Float64Array {
    const slope = this.#times(this.#pencil.g, x).map((value) => -value);
    slope[this.#row]! -= 1;
    this.#solve(slope);
    return slope;
  }

  #times(matrix: Float64Array, x: Float64Array): Float64Array {
    const { size } = this.#pencil;
    return x.map((_, row) => {
      let sum = 0;
      for (let column = 0; column < size; column++) sum += matrix[row * size + column]! * x[column]!;
      return sum;
    });
  }
}
