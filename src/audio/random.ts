/**
 * A repeatable stream of 32-bit integers, 1 to 2³²−1 (Marsaglia, Xorshift RNGs, J. Stat. Software 8(14), 2003; shifts 13, 17, 5).
 *
 * @param seed any integer but 0
 */
export function createRandom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state >>> 0;
  };
}
