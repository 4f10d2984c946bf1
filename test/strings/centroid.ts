import { realFft } from "../../src/filter/real-fft.ts";

/** Where the energy balances, 50 Hz to 12 kHz. */
export function centroidHz(samples: Float32Array, sampleRateHz: number): number {
  const size = 2 ** Math.ceil(Math.log2(samples.length));
  const padded = new Float64Array(size);
  padded.set(samples);
  const spectrum = new Float64Array(size + 2);
  realFft(size).forward(spectrum, padded);
  let [sum, moment] = [0, 0];
  const bin = (hertz: number) => Math.round((hertz * size) / sampleRateHz);
  for (let k = bin(50); k <= Math.min(size / 2, bin(12_000)); k += 1) {
    const energy = spectrum[2 * k]! ** 2 + spectrum[2 * k + 1]! ** 2;
    sum += energy;
    moment += (energy * k * sampleRateHz) / size;
  }
  return moment / sum;
}
