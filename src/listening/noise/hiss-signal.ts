import { createRandom } from "../../audio/random.ts";
import { createRealFft, type RealFft } from "../../filter/real-fft.ts";

/** Before it comes again; nobody hears noise repeat after seconds. */
const LEAST_SECONDS = 2;
/** Below it nothing is heard, and a loudspeaker should not be driven. */
const LOWEST_HZ = 5;
const SEED = 1928;
const POINTS_PER_OCTAVE = 24;

/**
 * White noise of unit variance as a spectrum: every bin of one size, its phase by chance, the same on every call. So many sines sum to
 * a normal distribution, and over its length it has just the density asked for, where drawn samples would scatter about it.
 */
function whiteSpectrum(size: number): Float64Array {
  const random = createRandom(SEED);
  const spectrum = new Float64Array(size + 2);
  for (let bin = 1; bin < size / 2; bin++) {
    const angle = (2 * Math.PI * random()) / 2 ** 32;
    spectrum[2 * bin] = Math.sqrt(size) * Math.cos(angle);
    spectrum[2 * bin + 1] = Math.sqrt(size) * Math.sin(angle);
  }
  return spectrum;
}

/** Power densities in V²/Hz at frequencies in Hz. */
export type Density = (frequenciesHz: Float64Array) => Float64Array;

/** Volts over √Hz at every bin of a transform, straight between points on logarithmic scales. */
function amplitudesAt(density: Density, sampleRateHz: number, size: number): Float64Array {
  const octaves = Math.log2(sampleRateHz / 2 / LOWEST_HZ);
  const count = Math.ceil(octaves * POINTS_PER_OCTAVE) + 1;
  const points = density(Float64Array.from({ length: count }, (_, k) => LOWEST_HZ * 2 ** (k / POINTS_PER_OCTAVE)));
  const logs = points.map((power) => Math.log(Math.max(power, Number.MIN_VALUE)) / 2);
  const amplitudes = new Float64Array(size / 2 + 1);
  for (let bin = Math.ceil((LOWEST_HZ * size) / sampleRateHz); bin <= size / 2; bin++) {
    const at = Math.log2((bin * sampleRateHz) / size / LOWEST_HZ) * POINTS_PER_OCTAVE;
    const below = Math.min(Math.floor(at), count - 2);
    amplitudes[bin] = Math.exp(logs[below]! + (at - below) * (logs[below + 1]! - logs[below]!));
  }
  return amplitudes;
}

/** Noise with given power densities, in volts, over seconds after which it comes again without a seam. */
export class Hiss {
  readonly #sampleRateHz: number;
  readonly #size: number;
  readonly #fft: RealFft;
  readonly #white: Float64Array;

  constructor(sampleRateHz: number) {
    this.#sampleRateHz = sampleRateHz;
    this.#size = 2 ** Math.ceil(Math.log2(LEAST_SECONDS * sampleRateHz));
    this.#fft = createRealFft(this.#size);
    this.#white = whiteSpectrum(this.#size);
  }

  /** White noise through the filter whose gain makes it so dense; filtered round its own end, it has no beginning. */
  period(density: Density): Float64Array {
    const amplitudes = amplitudesAt(density, this.#sampleRateHz, this.#size);
    // White noise of unit variance has a one-sided density of two over the rate.
    const scale = Math.sqrt(this.#sampleRateHz / 2);
    const spectrum = new Float64Array(this.#white.length);
    for (let at = 0; at < spectrum.length; at++) spectrum[at] = this.#white[at]! * scale * amplitudes[at >> 1]!;
    const samples = new Float64Array(this.#size);
    this.#fft.inverse(samples, spectrum);
    return samples;
  }
}
