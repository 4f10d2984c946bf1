export interface RenderOptions {
  /** Called between blocks; may throw to stop the work. */
  readonly checkpoint?: () => void;
  /** Long enough for the longest output: the answer is its beginning, written over, instead of memory of its own. */
  readonly into?: Float32Array;
}

export interface Convolver {
  /** Samples of the longest input. */
  readonly inputLength: number;
  /**
   * Σ input[i] ∗ filters[i], inputLength + taps − 1 samples, taps being those of the longest filter given. A filter of nothing
   * but zeros, as of a coil that does not reach the jack, costs nothing.
   *
   * @throws RangeError if there are more or fewer filters than inputs, or one is empty or longer than `longestFilter`.
   */
  render(filters: readonly Float64Array[], options?: RenderOptions): Float32Array;
}

export interface ConvolverOptions extends Pick<RenderOptions, "checkpoint"> {
  /** Room for the inputs' spectra. Where they would need more, they are computed anew by every render. */
  readonly memoryBytes?: number;
}

export function outputOf(length: number, into: Float32Array | undefined): Float32Array {
  return into ? into.subarray(0, length) : new Float32Array(length);
}

/** @throws RangeError if there is nothing to convolve. */
export function requireWork(inputs: readonly Float32Array[], longestFilter: number): void {
  if (inputs.length === 0 || longestFilter < 1) throw new RangeError("A convolver needs an input and at least one tap");
}

/**
 * The length of the longest filter, and which inputs have one that is more than zeros.
 *
 * @throws RangeError as `Convolver.render` says.
 */
export function checkedFilters(filters: readonly Float64Array[], inputs: number, longestFilter: number) {
  if (filters.length !== inputs) throw new RangeError(`${inputs} inputs need as many filters, not ${filters.length}`);
  const lengths = filters.map((filter) => filter.length);
  if (Math.min(...lengths) < 1) throw new RangeError("A filter needs at least one tap");
  const taps = Math.max(...lengths);
  if (taps > longestFilter)
    throw new RangeError(`A filter of ${taps} taps is longer than the ${longestFilter} planned for`);
  const heard = filters.flatMap((filter, index) => (filter.some((tap) => tap !== 0) ? [index] : []));
  return { taps, heard };
}
