/** The same for every file, so that the same sound always gives the same bytes; channels start far apart in the one long cycle. */
const SEED = 0x2545f491;
const SEED_STEP = 0x9e3779b9;

export function ditherSeed(channel: number): number {
  return (SEED + Math.imul(channel, SEED_STEP)) | 0;
}

/**
 * The next of the generator's states, signed 32-bit integers (Knuth's and Lewis's, of full period: Press et al., Numerical Recipes
 * in C, 2nd edition, section 7.1). Numbers stand in place, for a bundle makes named ones variables that are looked up every time.
 */
export function nextDitherState(state: number): number {
  return (Math.imul(state, 1_664_525) + 1_013_904_223) | 0;
}

/**
 * Triangular dither, −1 to +1 step of the output: it makes the rounding error's mean and power independent of the sound
 * (Lipshitz, Wannamaker & Vanderkooy, Quantization and Dither, J. AES 40(5), 1992). As the difference of each number of a flat
 * stream from the one before it takes one number a sample, and its noise lies higher, where the ear is duller.
 */
export function createDither(channel: number): () => number {
  let state = ditherSeed(channel);
  let before = 0;
  return () => {
    state = nextDitherState(state);
    const number = state * 2 ** -32;
    const dither = number - before;
    before = number;
    return dither;
  };
}
