/** Poles of the A curve, Hz (IEC 61672-1, annex E). */
const [F1, F2, F3, F4] = [20.598997, 107.65265, 737.86223, 12194.217];

function unscaled(hz: number): number {
  const square = hz * hz;
  const low = Math.sqrt((square + F2 ** 2) * (square + F3 ** 2));
  return (F4 ** 2 * square ** 2) / ((square + F1 ** 2) * low * (square + F4 ** 2));
}

const AT_1_KHZ = unscaled(1000);

/** Gain of A-weighting (IEC 61672-1), 1 at 1 kHz. @param hz above 0 */
export function aWeight(hz: number): number {
  return unscaled(hz) / AT_1_KHZ;
}
