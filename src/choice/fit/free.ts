/** A share of the errors from `from` on that may be any multiple of `along`. */
export interface Free {
  readonly from: number;
  readonly along: Float64Array;
}

/** A level that nobody knows. */
export function freeLevel(from: number, count: number): Free {
  return { from, along: new Float64Array(count).fill(1) };
}

/** A time that nobody knows, of angles at these frequencies. */
export function freeDelay(from: number, frequenciesHz: readonly number[]): Free {
  return { from, along: Float64Array.from(frequenciesHz) };
}

/** Takes that share out. */
export function takeOut(errors: Float64Array, { from, along }: Free): void {
  let [product, square] = [0, 0];
  for (const [i, each] of along.entries()) {
    product += errors[from + i]! * each;
    square += each * each;
  }
  for (const [i, each] of along.entries()) errors[from + i]! -= (product / square) * each;
}

/** Relative errors by their own median, none counted smaller than a third of it: a model is not right to the last digit. */
export function usualScale(errors: readonly number[]): number[] {
  const middle = [...errors].sort((a, b) => a - b)[Math.floor(errors.length / 2)]!;
  return errors.map((error) => Math.max(1 / 3, error / middle));
}
