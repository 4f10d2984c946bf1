import { realFft } from "../filter/real-fft.ts";
import type { Spectrum } from "../network/nodal-analysis.ts";
import type { Drive } from "./drive.ts";
import { SLICES } from "./slices.ts";

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
