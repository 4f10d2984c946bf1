import type { Stretch } from "./independent-share.ts";

/** Neighbours on either side that tell how far off a value may be. */
const NEIGHBOURS = 4;
/** Of errors that are alike, so many neighbours make the largest mean hardly more than three times the least. */
const BEYOND_CHANCE = 5;
/** One value is not worth more than nine usual ones. */
const LEAST = 1 / 3;

/** Root mean square of the errors about each place of a list of stretches of one length. */
function aboutEach(errors: Float64Array, stretches: readonly Stretch[], count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => {
    let [sum, values] = [0, 0];
    for (const [from] of stretches) {
      for (let k = Math.max(0, i - NEIGHBOURS); k <= Math.min(count - 1, i + NEIGHBOURS); k++) {
        sum += errors[from + k]! ** 2;
        values += 1;
      }
    }
    return Math.sqrt(sum / values);
  });
}

/**
 * How far off the values of a table are beside each other, as what a fit leaves of it says: a table that was computed from others is
 * often worth nothing at one end. Sizes and angles of one line go together.
 * @returns undefined where they differ by no more than chance has it
 */
export function unevenScatter(errors: Float64Array, stretches: readonly Stretch[]): Float64Array | undefined {
  const count = stretches[0]![1] - stretches[0]![0];
  const about = aboutEach(errors, stretches, count);
  const sorted = Float64Array.from(about).sort();
  if (!(sorted.at(-1)! > BEYOND_CHANCE * sorted[0]!)) return undefined;
  const middle = sorted[Math.floor(count / 2)]!;
  const scale = about.map((each) => Math.max(LEAST, each / middle));
  const whole = new Float64Array(errors.length);
  for (const [from] of stretches) whole.set(scale, from);
  return whole;
}

/**
 * As `unevenScatter`, of sweeps whose sizes and angles are off by amounts of their own: each by what it is off as a whole.
 * @param beside how large the errors are expected to be, beside each other
 * @param sweeps the sizes and the angles of each
 * @returns what to expect instead; undefined where no sweep's lines differ by more than chance has it
 */
export function unevenSweeps(
  errors: Float64Array,
  beside: Float64Array,
  sweeps: readonly (readonly Stretch[])[],
): Float64Array | undefined {
  const scaled = errors.map((error, i) => error / beside[i]!);
  const found = beside.slice();
  let isUneven = false;
  for (const stretches of sweeps) {
    for (const [from, to] of stretches) {
      const own = scaled.subarray(from, to);
      const size = Math.sqrt(own.reduce((sum, error) => sum + error * error, 0) / own.length);
      if (size > 0) own.set(own.map((error) => error / size));
    }
    const scale = unevenScatter(scaled, stretches);
    if (!scale) continue;
    isUneven = true;
    for (const [from, to] of stretches) for (let i = from; i < to; i++) found[i]! *= scale[i]!;
  }
  return isUneven ? found : undefined;
}
