import { type BlockTransform, withTransform } from "./block-transform.ts";
import { createConvolver } from "./convolve.ts";
import {
  type Convolver,
  type ConvolverOptions,
  checkedFilters,
  outputOf,
  type RenderOptions,
  requireWork,
} from "./convolver.ts";
import { type Pffft, pffft } from "./pffft.ts";

/** Room for the inputs' spectra. */
const DEFAULT_MEMORY_BYTES = 96 * 2 ** 20;
const FLOAT_BYTES = 4;
const SHORTEST_RESERVE = 512;
const SMALLEST_BLOCK = 2048;
/** Seven eighths of such a block are new sound; larger ones win less than they cost, and the longest filters' would take 70 MB. */
const LARGEST_BLOCK_IN_RESERVES = 8;

/** Blocks of one size, each so much longer than its hop that filters up to `reserve` taps fit. */
interface Grid {
  readonly size: number;
  readonly reserve: number;
  readonly hop: number;
}

/**
 * The same as `createConvolver` in single precision by SIMD: the two differ by less than a millionth (−120 dB) of the power that the
 * coils would give one by one. Where the runtime has no SIMD it is `createConvolver`.
 */
export function createQuickConvolver(
  inputs: readonly Float32Array[],
  longestFilter: number,
  options: ConvolverOptions = {},
): Convolver {
  return pffft ? simdConvolver(pffft, inputs, longestFilter, options) : createConvolver(inputs, longestFilter, options);
}

function simdConvolver(
  pffft: Pffft,
  inputs: readonly Float32Array[],
  longestFilter: number,
  planned: ConvolverOptions,
): Convolver {
  requireWork(inputs, longestFilter);
  const inputLength = Math.max(...inputs.map((input) => input.length));
  const firstSounds = inputs.map((input) => firstSoundIn(input));
  const spectraOf = spectrumStore(inputs, inputLength + longestFilter - 1, planned.memoryBytes);

  function render(filters: readonly Float64Array[], options: RenderOptions = {}): Float32Array {
    const checkpoint = options.checkpoint ?? planned.checkpoint;
    const { taps, heard } = checkedFilters(filters, inputs.length, longestFilter);
    const output = outputOf(inputLength + taps - 1, options.into);
    if (heard.length === 0) return output.fill(0);
    const grid = gridFor(taps, output.length);
    withTransform(pffft, grid.size, (transform) => {
      const responses = heard.map((input) => spectrumOf(filters[input]!, transform));
      const load = heard.map((input) => spectraOf(input, grid, transform, checkpoint));
      transform.response.set(responses[0]!);
      const whole = transform.block.subarray(grid.reserve - 1);
      for (let block = 0, start = 0; start < output.length; block++, start += grid.hop) {
        checkpoint?.();
        transform.clear();
        for (let i = 0; i < load.length; i++) {
          load[i]!(block);
          if (load.length > 1) transform.response.set(responses[i]!);
          transform.accumulate();
        }
        transform.inverse();
        const count = output.length - start;
        output.set(count < grid.hop ? whole.subarray(0, count) : whole, start);
      }
    });
    // Rounding is spread over a whole block, and so would come before its cause.
    return output.fill(0, 0, Math.min(...heard.map((input) => firstSounds[input]!)));
  }

  return { inputLength, render };
}

function firstSoundIn(input: Float32Array): number {
  const first = input.findIndex((sample) => sample !== 0);
  return first < 0 ? input.length : first;
}

/**
 * 512, 1024, 2560 and on in octaves: the filters of a set fall into few lengths, for each has its own spectra of the inputs.
 * 2560 taps hold the usual tone branch of 22 nF and 250 kΩ at 48 kHz.
 */
function reserveFor(taps: number): number {
  if (taps <= 2 * SHORTEST_RESERVE) return taps <= SHORTEST_RESERVE ? SHORTEST_RESERVE : 2 * SHORTEST_RESERVE;
  let reserve = 5 * SHORTEST_RESERVE;
  while (taps > reserve) reserve *= 2;
  return reserve;
}

/** Measured: while four buffers fit the first-level cache, a block costs as much as it is long; beyond, each sample costs more. */
function costPerSample(size: number): number {
  const octavesBeyond = Math.log2(size / 4096);
  return octavesBeyond <= 0 ? 1 : 1.4 + 0.05 * octavesBeyond;
}

function gridFor(taps: number, outputLength: number): Grid {
  const reserve = reserveFor(taps);
  let best: Grid | undefined;
  let leastCost = Number.POSITIVE_INFINITY;
  for (let size = SMALLEST_BLOCK; !best || size <= LARGEST_BLOCK_IN_RESERVES * reserve; size *= 2) {
    const hop = size - reserve + 1;
    if (hop < 1) continue;
    const cost = Math.ceil(outputLength / hop) * size * costPerSample(size);
    if (cost >= leastCost) continue;
    best = { size, reserve, hop };
    leastCost = cost;
  }
  return best;
}

/** Spectrum of a filter, in the transform's order of bins. */
function spectrumOf(filter: Float64Array, transform: BlockTransform): Float32Array {
  transform.block.fill(0);
  transform.block.set(filter);
  transform.forward();
  return transform.block.slice();
}

/** Puts the spectrum of one block of an input into the transform. */
type Loader = (block: number) => void;

/** The spectra of the inputs on every grid asked for, kept as long as there is room. */
function spectrumStore(inputs: readonly Float32Array[], longestOutput: number, memoryBytes = DEFAULT_MEMORY_BYTES) {
  const kept = new Map<string, readonly Float32Array[]>();
  let room = memoryBytes;

  return (input: number, grid: Grid, transform: BlockTransform, checkpoint?: () => void): Loader => {
    const { size, reserve, hop } = grid;
    const compute = (block: number) => {
      place(transform.block, inputs[input]!, block * hop - (reserve - 1));
      transform.forward();
    };
    const key = `${input} ${size} ${reserve}`;
    let spectra = kept.get(key);
    if (!spectra) {
      const blocks = Math.ceil(longestOutput / hop);
      const bytes = blocks * size * FLOAT_BYTES;
      if (bytes > room) return compute;
      const all = new Float32Array(blocks * size);
      spectra = Array.from({ length: blocks }, (_, block) => {
        checkpoint?.();
        compute(block);
        const spectrum = all.subarray(block * size, (block + 1) * size);
        spectrum.set(transform.block);
        return spectrum;
      });
      kept.set(key, spectra);
      room -= bytes;
    }
    const found = spectra;
    return (block) => void transform.block.set(found[block]!);
  };
}

/** The samples of `input` from `first` on, silence outside it. */
function place(block: Float32Array, input: Float32Array, first: number): void {
  const from = Math.min(block.length, Math.max(0, -first));
  const to = Math.max(from, Math.min(block.length, input.length - first));
  block.fill(0, 0, from);
  block.set(input.subarray(first + from, first + to), from);
  block.fill(0, to);
}
