/** A slip of the unit comes before one of the decimal point. */
const SLIPS = [1e3, 1e-3, 10, 0.1, 100, 0.01, 1e4, 1e-4, 1e5, 1e-5, 1e6, 1e-6];

/**
 * The value that was meant where one was written with a wrong unit, or with its point in the wrong place: times the power of ten that
 * brings it among the usual ones, else nearest to them.
 * @param value in any unit
 * @param low the least usual one, in the same unit
 * @param high the most usual one
 */
export function likelyValue(value: number, low: number, high: number): number {
  const tried = SLIPS.map((slip) => value * slip);
  // A power of ten is no exact double: 0.22 µF ÷ 10 may fall under 22 nF by one bit.
  const usual = tried.find((each) => each > low * 0.999 && each < high * 1.001);
  const centre = Math.log(low * high) / 2;
  const distance = (each: number) => Math.abs(Math.log(each) - centre);
  return usual ?? tried.reduce((nearest, each) => (distance(each) < distance(nearest) ? each : nearest));
}
