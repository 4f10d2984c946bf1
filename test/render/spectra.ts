import { realFft } from "../../src/filter/real-fft.ts";

export interface Bins {
  readonly frequenciesHz: Float64Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export function powerOfTwoFrom(length: number): number {
  return 2 ** Math.ceil(Math.log2(length));
}

/** The samples' whole transform, thinned to about `count` bins from `fromHz` to `toHz`, evenly spread over the octaves. */
export function spectrumOf(samples: Float32Array, sampleRateHz: number, size: number, bins: readonly number[]): Bins {
  const padded = new Float64Array(size);
  padded.set(samples);
  const spectrum = new Float64Array(size + 2);
  realFft(size).forward(spectrum, padded);
  return {
    frequenciesHz: Float64Array.from(bins, (bin) => (bin * sampleRateHz) / size),
    re: Float64Array.from(bins, (bin) => spectrum[2 * bin]!),
    im: Float64Array.from(bins, (bin) => spectrum[2 * bin + 1]!),
  };
}

export function binsBetween(fromHz: number, toHz: number, count: number, sampleRateHz: number, size: number): number[] {
  const bins = Array.from({ length: count }, (_, i) =>
    Math.round((fromHz * (toHz / fromHz) ** (i / (count - 1)) * size) / sampleRateHz),
  );
  return [...new Set(bins)].filter((bin) => (bin * sampleRateHz) / size >= fromHz);
}

const inputSpectra = new WeakMap<Float32Array, Map<string, Bins>>();

/** The transform of an input that is compared with one output after another. */
function inputSpectrum(input: Float32Array, sampleRateHz: number, size: number, bins: readonly number[]): Bins {
  const known = inputSpectra.get(input) ?? new Map<string, Bins>();
  inputSpectra.set(input, known);
  const key = `${sampleRateHz} ${size} ${bins[0]} ${bins.at(-1)}`;
  const spectrum = known.get(key) ?? spectrumOf(input, sampleRateHz, size, bins);
  known.set(key, spectrum);
  return spectrum;
}

/** Gain in dB and phase in degrees (−180 to 180) from `input` to `output`, the delay taken out again. */
export function measuredTransfer(
  input: Float32Array,
  output: Float32Array,
  sampleRateHz: number,
  delaySamples: number,
  fromHz = 20,
  toHz = 18_000,
): { frequenciesHz: Float64Array; magnitude: Float64Array; phase: Float64Array } {
  const size = powerOfTwoFrom(output.length);
  const bins = binsBetween(fromHz, toHz, 160, sampleRateHz, size);
  const x = inputSpectrum(input, sampleRateHz, size, bins);
  const y = spectrumOf(output, sampleRateHz, size, bins);
  const magnitude = y.re.map((re, i) => 20 * Math.log10(Math.hypot(re, y.im[i]!) / Math.hypot(x.re[i]!, x.im[i]!)));
  const phase = y.re.map((re, i) => {
    const turned = Math.atan2(y.im[i]!, re) - Math.atan2(x.im[i]!, x.re[i]!);
    const radians = turned + (2 * Math.PI * x.frequenciesHz[i]! * delaySamples) / sampleRateHz;
    return (Math.atan2(Math.sin(radians), Math.cos(radians)) * 180) / Math.PI;
  });
  return { frequenciesHz: x.frequenciesHz, magnitude, phase };
}

export function largestDifference(a: Float64Array, b: Float64Array): number {
  return a.reduce((largest, value, i) => Math.max(largest, Math.abs(value - b[i]!)), 0);
}

/** Largest magnitude of many samples. */
export function peakOf(samples: Float32Array): number {
  return samples.reduce((largest, sample) => Math.max(largest, Math.abs(sample)), 0);
}
