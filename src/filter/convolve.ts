import FFT from "fft.js";
import {
  type Convolver,
  type ConvolverOptions,
  checkedFilters,
  outputOf,
  type RenderOptions,
  requireWork,
} from "./convolver.ts";
import { realFft } from "./real-fft.ts";

/** Holds three inputs of a minute at 48 kHz; longer jobs run about half as fast instead of filling the memory. */
const DEFAULT_MEMORY_BYTES = 160 * 2 ** 20;
const SMALLEST_BLOCK = 256;
/** At 16 bytes a complex number, larger blocks and their spectra no longer fit the usual second-level cache of 1 or 2 MB. */
const LARGEST_QUICK_BLOCK = 16_384;
/** Only filters near the longest allowed need more; a transform of 2²² takes 100 MB. */
const LARGEST_BLOCK = 2 ** 21;

/**
 * Overlap-save convolution of the same inputs with many sets of filters (Oppenheim & Schafer, Discrete-Time Signal Processing, 8.7.3).
 * Two blocks, one after the other, share a complex transform as its real and imaginary part: filters are real, so they stay apart.
 * The inputs' spectra are computed once and the products summed before the one inverse transform.
 */
export function createConvolver(
  inputs: readonly Float32Array[],
  longestFilter: number,
  { checkpoint, memoryBytes = DEFAULT_MEMORY_BYTES }: ConvolverOptions = {},
): Convolver {
  requireWork(inputs, longestFilter);
  const inputLength = Math.max(...inputs.map((input) => input.length));
  const size = blockSize(inputLength, longestFilter);
  const hop = size - longestFilter + 1;
  const fft = new FFT(size);
  const pairs = Math.ceil((inputLength + longestFilter - 1) / (2 * hop));
  const packed = new Float64Array(2 * size);
  const product = new Float64Array(2 * size);

  function transformPair(input: Float32Array, pair: number, spectrum: Float64Array): void {
    const first = 2 * pair * hop - (longestFilter - 1);
    place(packed, 0, input, first, size);
    place(packed, 1, input, first + hop, size);
    fft.transform(spectrum, packed);
  }

  const fits = inputs.length * pairs * size * 16 <= memoryBytes;
  const kept = fits ? inputs.map((input) => transformAll(input)) : null;
  const passing = new Float64Array(2 * size);

  function transformAll(input: Float32Array): Float64Array[] {
    return Array.from({ length: pairs }, (_, pair) => {
      checkpoint?.();
      const spectrum = new Float64Array(2 * size);
      transformPair(input, pair, spectrum);
      return spectrum;
    });
  }

  function spectrumOf(input: number, pair: number): Float64Array {
    if (kept) return kept[input]![pair]!;
    transformPair(inputs[input]!, pair, passing);
    return passing;
  }

  function render(filters: readonly Float64Array[], options: RenderOptions = {}): Float32Array {
    const { taps, heard } = checkedFilters(filters, inputs.length, longestFilter);
    const spectra = heard.map((input) => filterSpectrum(filters[input]!, size));
    const output = outputOf(inputLength + taps - 1, options.into);
    if (heard.length === 0) return output.fill(0);
    for (let pair = 0; 2 * pair * hop < output.length; pair++) {
      options.checkpoint?.();
      for (let i = 0; i < heard.length; i++) {
        const multiply = i === 0 ? multiplyInto : multiplyOnto;
        multiply(product, spectrumOf(heard[i]!, pair), spectra[i]!, size);
      }
      // `product` is the conjugate of the sum, so the forward transform gives the inverse, its imaginary part turned round.
      fft.transform(packed, product);
      unpack(output, packed, 2 * pair * hop, hop, longestFilter - 1);
    }
    return output;
  }

  return { inputLength, render };
}

/** The size of least work: n·log n for each stretch of blocks needed, larger sizes paying for the cache they miss. */
function blockSize(inputLength: number, taps: number): number {
  const outputLength = inputLength + taps - 1;
  let best = 0;
  let leastWork = Number.POSITIVE_INFINITY;
  for (let size = SMALLEST_BLOCK; size <= LARGEST_BLOCK; size *= 2) {
    const hop = size - taps + 1;
    if (hop < 1) continue;
    const pairs = Math.ceil(outputLength / (2 * hop));
    const work = pairs * size * (Math.log2(size) + 3) * (size > LARGEST_QUICK_BLOCK ? 1.5 : 1);
    if (work < leastWork) {
      leastWork = work;
      best = size;
    }
  }
  return best;
}

/** Spectrum of a filter, bins 0 to size/2, with the 1/size of the inverse transform already in it. */
function filterSpectrum(filter: Float64Array, size: number): Float64Array {
  const samples = new Float64Array(size);
  for (let n = 0; n < filter.length; n++) samples[n] = filter[n]! / size;
  const spectrum = new Float64Array(size + 2);
  realFft(size).forward(spectrum, samples);
  return spectrum;
}

/** `product` = conj(x·h), h given for bins 0 to size/2 and being the conjugate of itself mirrored above. */
function multiplyInto(product: Float64Array, x: Float64Array, h: Float64Array, size: number): void {
  product[0] = x[0]! * h[0]!;
  product[1] = -x[1]! * h[0]!;
  product[size] = x[size]! * h[size]!;
  product[size + 1] = -x[size + 1]! * h[size]!;
  for (let low = 2, high = 2 * size - 2; low < size; low += 2, high -= 2) {
    const hr = h[low]!;
    const hi = h[low + 1]!;
    const lr = x[low]!;
    const li = x[low + 1]!;
    const ur = x[high]!;
    const ui = x[high + 1]!;
    product[low] = lr * hr - li * hi;
    product[low + 1] = -(lr * hi + li * hr);
    product[high] = ur * hr + ui * hi;
    product[high + 1] = ur * hi - ui * hr;
  }
}

/** The same, added to what `product` already holds. */
function multiplyOnto(product: Float64Array, x: Float64Array, h: Float64Array, size: number): void {
  product[0]! += x[0]! * h[0]!;
  product[1]! -= x[1]! * h[0]!;
  product[size]! += x[size]! * h[size]!;
  product[size + 1]! -= x[size + 1]! * h[size]!;
  for (let low = 2, high = 2 * size - 2; low < size; low += 2, high -= 2) {
    const hr = h[low]!;
    const hi = h[low + 1]!;
    const lr = x[low]!;
    const li = x[low + 1]!;
    const ur = x[high]!;
    const ui = x[high + 1]!;
    product[low]! += lr * hr - li * hi;
    product[low + 1]! -= lr * hi + li * hr;
    product[high]! += ur * hr + ui * hi;
    product[high + 1]! += ur * hi - ui * hr;
  }
}

/** `size` samples of `input` from `first` on, silence outside it, as the real (0) or imaginary (1) parts of `packed`. */
function place(packed: Float64Array, part: 0 | 1, input: Float32Array, first: number, size: number): void {
  const from = Math.min(size, Math.max(0, -first));
  const to = Math.max(from, Math.min(size, input.length - first));
  for (let n = 0; n < from; n++) packed[2 * n + part] = 0;
  for (let n = from; n < to; n++) packed[2 * n + part] = input[first + n]!;
  for (let n = to; n < size; n++) packed[2 * n + part] = 0;
}

function unpack(output: Float32Array, packed: Float64Array, start: number, hop: number, skip: number): void {
  const first = Math.min(hop, output.length - start);
  for (let n = 0; n < first; n++) output[start + n] = packed[2 * (skip + n)]!;
  const second = Math.min(hop, output.length - start - hop);
  for (let n = 0; n < second; n++) output[start + hop + n] = -packed[2 * (skip + n) + 1]!;
}
