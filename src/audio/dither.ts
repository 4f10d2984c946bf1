import { createRandom } from "./random.ts";

/** The same for every file, so that the same sound always gives the same bytes. */
const SEED = 0x2545f491;

/**
 * Triangular dither, −1 to +1 step of the output, the sum of two flat ones: it makes the rounding error's mean and power
 * independent of the sound (Lipshitz, Wannamaker & Vanderkooy, Quantization and Dither, J. AES 40(5), 1992).
 */
export function createDither(): () => number {
  const random = createRandom(SEED);
  return () => {
    const bits = random();
    return ((bits & 0xffff) + (bits >>> 16) - 0xffff) / 0x10000;
  };
}
