/** A share of the errors from `from` on that may be a multiple of `along`. */
export interface Free {
  readonly from: number;
  readonly along: Float64Array;
  /** The multiple's own standard deviation about 0; left out: it may be any. */
  readonly spread?: number;
}

/** A level that nobody knows. */
export function freeLevel(from: number, count: number): Free {
  return { from, along: new Float64Array(count).fill(1) };
}

/** A time that nobody knows, of angles at these frequencies; within some seconds where they are given. */
export function freeDelay(from: number, frequenciesHz: readonly number[], spreadSeconds?: number): Free {
  const along = Float64Array.from(frequenciesHz, (hz) => 2 * Math.PI * hz);
  return { from, along, ...(spreadSeconds === undefined ? {} : { spread: spreadSeconds }) };
}

/**
 * Takes that share out of errors that are each divided by `sigma`.
 * @returns the multiple in standard deviations of its own
 */
export function takeOut(errors: Float64Array, { from, along, spread }: Free, sigma: Float64Array): number {
  let [product, square] = [0, spread === undefined ? 0 : spread ** -2];
  for (const [i, each] of along.entries()) {
    const scaled = each / sigma[from + i]!;
    product += errors[from + i]! * scaled;
    square += scaled * scaled;
  }
  const multiple = product / square;
  for (const [i, each] of along.entries()) errors[from + i]! -= (multiple * each) / sigma[from + i]!;
  return spread === undefined ? 0 : multiple / spread;
}
