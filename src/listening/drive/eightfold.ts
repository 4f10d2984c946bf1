import { HALF_BAND_DELAY, HalfBandDown, HalfBandUp } from "./half-band.ts";
import type { DriveLaw } from "./law.ts";
import { SoftClip } from "./soft-clip.ts";

/** In samples at twice the rate: both half-bands there and back, and the clipper's half of a sample. */
export const EIGHTFOLD_DELAY = HALF_BAND_DELAY + HALF_BAND_DELAY / 2 + 0.5 / 4;

/** From twice the rate to eight times, through the clipper, and back. */
export class Eightfold {
  readonly #clip: SoftClip;
  readonly #up: readonly [HalfBandUp, HalfBandUp];
  readonly #down: readonly [HalfBandDown, HalfBandDown];
  readonly #fourfold: Float64Array;
  readonly #eightfold: Float64Array;

  /** @param most samples of a block, at twice the rate */
  constructor(law: DriveLaw, most: number) {
    this.#clip = new SoftClip(law);
    this.#up = [new HalfBandUp(most), new HalfBandUp(2 * most)];
    this.#down = [new HalfBandDown(2 * most), new HalfBandDown(most)];
    this.#fourfold = new Float64Array(2 * most);
    this.#eightfold = new Float64Array(4 * most);
  }

  /** Writes over the first `count` samples, which follow those of the call before. */
  run(samples: Float64Array, count: number): void {
    const [toFour, toEight] = this.#up;
    const [fromEight, fromFour] = this.#down;
    toFour.run(samples, count, this.#fourfold);
    toEight.run(this.#fourfold, 2 * count, this.#eightfold);
    this.#clip.run(this.#eightfold, 4 * count);
    fromEight.run(this.#eightfold, 2 * count, this.#fourfold);
    fromFour.run(this.#fourfold, count, samples);
  }
}
