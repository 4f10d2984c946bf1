import { SILENT_POWER } from "../decibels.ts";
import { bandTaper, taperAt } from "./band-taper.ts";
import { realFft } from "./real-fft.ts";

/** Complex gain of a linear, real, stable system at the given frequencies (Hz, ascending, all above 0). */
export type TransferFunction = (frequenciesHz: Float64Array) => {
  readonly re: Float64Array;
  readonly im: Float64Array;
};

export interface ImpulseResponse {
  readonly taps: Float64Array;
  /** How far the response is shifted to the right; the same for every filter made with the same options. */
  readonly delaySamples: number;
  readonly sampleRateHz: number;
}

export interface ImpulseOptions {
  /**
   * Samples by which the transfer function may answer before its cause, as a bounded inverse filter does; added to the delay.
   * 0, the default, is right for every circuit.
   */
  readonly lookAheadSamples?: number;
}

/** Every filter is delayed by this many samples, so that filters of several sources may be summed as they come. */
export function filterDelaySamples(sampleRateHz: number): number {
  return taperAt(sampleRateHz).halfLength;
}

/**
 * The taps left off sum, in magnitude, to less than this fraction of the largest gain: a bound on the error at any frequency.
 * It leaves 0.007 dB of error 40 dB down in the null between two sources, and 0.00004 dB on a single one.
 */
const TAIL_TOLERANCE = 4e-6;
/** V/V: 60 dB under silence, where what is left is rounding and never dies away. */
const LEAST_TAIL = 1e-13;

/** A hard end, small as it is, would show at 18 kHz where a large tone cap leaves 75 dB less than at the bottom. */
const END_FADE = 32;

/** Long enough for the usual tone caps and pots (22 nF with 250 kΩ is 5.5 ms) to die away at the first try. */
const FIRST_SECONDS = 0.064;

/** Longest response kept. A decay still going on by then belongs to a corner under 1 Hz, far below hearing, and is faded out. */
export const MAX_RESPONSE_SECONDS = 2;

/** Asked instead of 0 Hz, where a network with a series cap may have no unique solution; under any corner that matters. */
const NEARLY_DC_HZ = 1e-3;

/**
 * The FIR filter whose frequency response is `transfer` delayed by `delaySamples`, from 0 to 0.82 of the Nyquist frequency (18 kHz
 * at 44.1 kHz), from 88.2 kHz on to 0.94 of it (90 kHz at 192 kHz); above, it is tapered to nothing at Nyquist. The method is linear in `transfer` but for the tail left off.
 * In that band the error is under 4e-6 of the largest gain; decays longer than MAX_RESPONSE_SECONDS are faded out.
 *
 * @throws RangeError where `transfer` gives a number that is not finite.
 */
export function impulseResponse(
  transfer: TransferFunction,
  sampleRateHz: number,
  { lookAheadSamples = 0 }: ImpulseOptions = {},
): ImpulseResponse {
  const ownDelay = filterDelaySamples(sampleRateHz);
  const delaySamples = ownDelay + lookAheadSamples;
  const longest = powerOfTwoFrom(MAX_RESPONSE_SECONDS * sampleRateHz);
  let size = Math.min(longest, powerOfTwoFrom(FIRST_SECONDS * sampleRateHz + 4 * delaySamples));
  for (;;) {
    const { samples, largestGain } = sampledResponse(transfer, sampleRateHz, size, delaySamples);
    const settled = Math.max(
      settledLength(samples, Math.max(TAIL_TOLERANCE * largestGain, LEAST_TAIL)),
      2 * ownDelay + 1,
    );
    // What wraps round in time is smaller than what is left in the last quarter, if that is already negligible.
    if (settled <= (3 * size) / 4) return { taps: faded(samples, settled, END_FADE), delaySamples, sampleRateHz };
    if (size >= longest) return { taps: faded(samples, size / 2, size / 2), delaySamples, sampleRateHz };
    size *= 2;
  }
}

/** The same for several transfer functions whose outputs will be summed: all come out as long as the longest needs. */
export function impulseResponses(
  transfers: readonly TransferFunction[],
  sampleRateHz: number,
  options: ImpulseOptions = {},
): ImpulseResponse[] {
  const responses = transfers.map((transfer) => impulseResponse(transfer, sampleRateHz, options));
  const length = Math.max(0, ...responses.map((response) => response.taps.length));
  return responses.map((response) => ({ ...response, taps: padded(response.taps, length) }));
}

/** What a transform of a size needs, used again by the next of that size and rate. */
interface Workspace {
  readonly frequenciesHz: Float64Array;
  readonly spectrum: Float64Array;
  readonly samples: Float64Array;
  readonly shifted: Float64Array;
}

/** Larger ones are rare, and made anew. */
const LARGEST_KEPT_SIZE = 1 << 14;
/** Of half a megabyte each at most. */
const MOST_WORKSPACES = 16;
const workspaces = new Map<string, Workspace>();

function workspaceFor(size: number, sampleRateHz: number): Workspace {
  const key = `${size} ${sampleRateHz}`;
  const kept = workspaces.get(key);
  if (kept) return kept;
  const frequenciesHz = new Float64Array(size / 2 + 1);
  for (let k = 0; k < frequenciesHz.length; k++) frequenciesHz[k] = (k * sampleRateHz) / size;
  frequenciesHz[0] = NEARLY_DC_HZ;
  const [spectrum, samples, shifted] = [size + 2, size, size].map((length) => new Float64Array(length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const made = { frequenciesHz, spectrum, samples, shifted };
  if (workspaces.size >= MOST_WORKSPACES) workspaces.clear();
  if (size <= LARGEST_KEPT_SIZE) workspaces.set(key, made);
  return made;
}

/** `samples` are good until the next call. */
function sampledResponse(transfer: TransferFunction, sampleRateHz: number, size: number, delaySamples: number) {
  const { frequenciesHz, spectrum, samples, shifted } = workspaceFor(size, sampleRateHz);
  const { re, im } = transfer(frequenciesHz);
  const taper = bandTaper(size, taperAt(sampleRateHz));
  let largestGain = 0;
  for (let k = 0; k <= size / 2; k++) {
    const gain = Math.sqrt(re[k]! * re[k]! + im[k]! * im[k]!);
    if (!(gain < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`The transfer function is not finite at ${frequenciesHz[k]} Hz`);
    }
    if (gain > largestGain) largestGain = gain;
    spectrum[2 * k] = re[k]! * taper[k]!;
    spectrum[2 * k + 1] = im[k]! * taper[k]!;
  }
  spectrum[1] = 0;
  spectrum[size + 1] = 0;
  if (largestGain * largestGain < SILENT_POWER) return { samples: shifted.fill(0), largestGain };
  realFft(size).inverse(samples, spectrum);
  // A shift in time is exact, where a phase factor would round at every bin.
  shifted.set(samples.subarray(0, size - delaySamples), delaySamples);
  shifted.set(samples.subarray(size - delaySamples), 0);
  return { samples: shifted, largestGain };
}

/** Number of leading samples after which the magnitudes sum to no more than `tolerance`. */
function settledLength(samples: Float64Array, tolerance: number): number {
  let tail = 0;
  let length = samples.length;
  while (length > 0) {
    tail += Math.abs(samples[length - 1]!);
    if (tail > tolerance) break;
    length--;
  }
  return length;
}

/** The first `kept` samples as they are and `fade` more, let down by half a cosine. */
function faded(samples: Float64Array, kept: number, fade: number): Float64Array {
  const taps = samples.slice(0, kept + fade);
  for (let n = 0; n < fade; n++) taps[kept + n]! *= 0.5 + 0.5 * Math.cos((Math.PI * (n + 1)) / (fade + 1));
  return taps;
}

function padded(taps: Float64Array, length: number): Float64Array {
  if (taps.length === length) return taps;
  const longer = new Float64Array(length);
  longer.set(taps);
  return longer;
}

function powerOfTwoFrom(least: number): number {
  return 2 ** Math.ceil(Math.log2(least));
}
