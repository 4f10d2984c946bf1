/** A repeatable stand-in for sound; the multiplier is the usual one of Lehmer's generator (Park & Miller, 1988). */
export function noise(length: number, seed: number): Float32Array {
  let state = seed;
  return Float32Array.from({ length }, () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 1_073_741_823.5 - 1;
  });
}
