import { realFft } from "../filter/real-fft.ts";
import type { Spectrum } from "../network/nodal-analysis.ts";
import { SLICES, SLICES_PER_BAND } from "./slices.ts";

/**
 * What drives the coils, as energy in every slice. `common`: all coils hear one signal, each with its own size and sign.
 * `each`: every coil has an EMF of its own, given as the cross energies Σ X_i·conj(X_j) of each pair, so that what coils add
 * or cancel at the jack comes out as it does for the sound itself.
 */
export type Drive =
  | (DriveOf & { readonly kind: "common"; readonly energy: Float64Array })
  | (DriveOf & { readonly kind: "each"; readonly cross: readonly (readonly Spectrum[])[] });

interface DriveOf {
  readonly name: string;
  /**
   * Where in each slice the energy sits: its centre of gravity, so that a curve's slope across a slice that holds one partial
   * costs nothing.
   */
  readonly frequenciesHz: Float64Array;
}

/** The same energy in every ERB band, in all coils alike: no phrase, every part of the ear's range counted the same. */
export function flatDrive(): Drive {
  return {
    kind: "common",
    name: "flat",
    frequenciesHz: SLICES.frequenciesHz,
    energy: new Float64Array(SLICES.frequenciesHz.length).fill(1 / SLICES_PER_BAND),
  };
}

function spectrumOf(samples: Float32Array, size: number): Float64Array {
  const padded = new Float64Array(size);
  padded.set(samples);
  const spectrum = new Float64Array(size + 2);
  realFft(size).forward(spectrum, padded);
  return spectrum;
}

/** Calls `add` for every bin within the slices. */
function forBins(
  sampleRateHz: number,
  size: number,
  add: (bin: number, slice: number, frequencyHz: number) => void,
): void {
  const count = SLICES.frequenciesHz.length;
  let slice = 0;
  for (let bin = Math.ceil((SLICES.edgesHz[0]! * size) / sampleRateHz); bin <= size / 2; bin++) {
    const frequency = (bin * sampleRateHz) / size;
    while (slice < count && frequency >= SLICES.edgesHz[slice + 1]!) slice++;
    if (slice === count) return;
    add(bin, slice, frequency);
  }
}

function crossEnergies(x: Float64Array, y: Float64Array, sampleRateHz: number, size: number): Spectrum {
  const re = new Float64Array(SLICES.frequenciesHz.length);
  const im = new Float64Array(SLICES.frequenciesHz.length);
  forBins(sampleRateHz, size, (bin, slice) => {
    const [xr, xi, yr, yi] = [x[2 * bin]!, x[2 * bin + 1]!, y[2 * bin]!, y[2 * bin + 1]!];
    re[slice]! += xr * yr + xi * yi;
    im[slice]! += xi * yr - xr * yi;
  });
  return { re, im };
}

/** The centre of gravity of all signals' energy in each slice; the slice's middle where there is none. */
function centresOf(spectra: readonly Float64Array[], sampleRateHz: number, size: number): Float64Array {
  const energy = new Float64Array(SLICES.frequenciesHz.length);
  const moment = new Float64Array(SLICES.frequenciesHz.length);
  for (const spectrum of spectra) {
    forBins(sampleRateHz, size, (bin, slice, frequency) => {
      const power = spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2;
      energy[slice]! += power;
      moment[slice]! += power * frequency;
    });
  }
  return SLICES.frequenciesHz.map((middle, slice) => (energy[slice]! > 0 ? moment[slice]! / energy[slice]! : middle));
}

/** At least 2 Hz of resolution, so that the narrowest slice (7 Hz) holds bins even of a short click. */
function transformSize(signals: readonly Float32Array[], sampleRateHz: number): number {
  return 2 ** Math.ceil(Math.log2(Math.max(sampleRateHz / 2, ...signals.map((signal) => signal.length))));
}

/** A partial of a plucked string: its energy at weight 1, and each coil's weight with its sign. */
export interface PluckedPartial {
  readonly frequencyHz: number;
  readonly energy: number;
  readonly weights: ArrayLike<number>;
}

/** The slice that a frequency lies in; none beyond the bands. */
function sliceOf(frequencyHz: number): number | undefined {
  const { edgesHz } = SLICES;
  let [low, high] = [0, edgesHz.length - 1];
  if (!(frequencyHz >= edgesHz[low]! && frequencyHz < edgesHz[high]!)) return undefined;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (frequencyHz >= edgesHz[middle]!) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Plucked strings by their partials, each coil with its own weight: what different partials add to each other's energy is left out,
 * which is nothing where they do not meet in one bin. @param coils how many weights each partial has
 */
export function driveOfPartials(name: string, partials: readonly PluckedPartial[], coils: number): Drive {
  const count = SLICES.frequenciesHz.length;
  const of = () => new Float64Array(count);
  const cross = Array.from({ length: coils }, () => Array.from({ length: coils }, () => ({ re: of(), im: of() })));
  const [energy, moment] = [of(), of()];
  for (const partial of partials) {
    const slice = sliceOf(partial.frequencyHz);
    if (slice === undefined) continue;
    for (let i = 0; i < coils; i++)
      for (let j = 0; j < coils; j++)
        cross[i]![j]!.re[slice]! += partial.energy * partial.weights[i]! * partial.weights[j]!;
    energy[slice]! += partial.energy;
    moment[slice]! += partial.energy * partial.frequencyHz;
  }
  const frequenciesHz = SLICES.frequenciesHz.map((middle, k) => (energy[k]! > 0 ? moment[k]! / energy[k]! : middle));
  return { kind: "each", name, frequenciesHz, cross };
}

/** The same strings under stronger or weaker coils. @param factors of each coil's EMF, signed */
export function scaledDrive(drive: Drive, factors: readonly number[]): Drive {
  if (drive.kind === "common") return drive;
  const cross = drive.cross.map((row, i) =>
    row.map(({ re, im }, j) => {
      const factor = factors[i]! * factors[j]!;
      return { re: re.map((value) => factor * value), im: im.map((value) => factor * value) };
    }),
  );
  return { ...drive, cross };
}

/** One signal that all coils hear, each with its own size and sign. @param name what the answer calls it */
export function commonDrive(name: string, signal: Float32Array, sampleRateHz: number): Drive {
  const size = transformSize([signal], sampleRateHz);
  const spectrum = spectrumOf(signal, size);
  const frequenciesHz = centresOf([spectrum], sampleRateHz, size);
  return { kind: "common", name, frequenciesHz, energy: crossEnergies(spectrum, spectrum, sampleRateHz, size).re };
}

/** Every coil's EMF as it is, in volts, its size and sign included; equal lengths. @param name what the answer calls it */
export function driveOfEach(name: string, signals: readonly Float32Array[], sampleRateHz: number): Drive {
  const size = transformSize(signals, sampleRateHz);
  const spectra = signals.map((signal) => spectrumOf(signal, size));
  const cross = spectra.map((x) => spectra.map((y) => crossEnergies(x, y, sampleRateHz, size)));
  return { kind: "each", name, frequenciesHz: centresOf(spectra, sampleRateHz, size), cross };
}
