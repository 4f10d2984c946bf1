/** Amplitude, frequency and decay of one partial, measured from samples alone. */
export interface MeasuredPartial {
  readonly frequencyHz: number;
  /** Carried back to the moment of the pluck. */
  readonly amplitude: number;
  readonly decayPerSecond: number;
}

function hann(length: number): Float64Array {
  return Float64Array.from({ length }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length));
}

/** |Σ w·x·e^(−jωt)| over a window that begins at sample `start`. */
export function windowedMagnitude(samples: Float32Array, start: number, window: Float64Array, cycles: number): number {
  let real = 0;
  let imaginary = 0;
  for (let i = 0; i < window.length; i += 1) {
    const value = window[i]! * samples[start + i]!;
    real += value * Math.cos(2 * Math.PI * cycles * i);
    imaginary -= value * Math.sin(2 * Math.PI * cycles * i);
  }
  return Math.hypot(real, imaginary);
}

function highestNear(magnitude: (hertz: number) => number, centreHz: number, reachHz: number): number {
  let best = centreHz;
  for (let reach = reachHz; reach > centreHz * 2e-6; reach /= 4) {
    const candidates = Array.from({ length: 17 }, (_, i) => best + ((i - 8) / 8) * reach);
    const levels = candidates.map(magnitude);
    best = candidates[levels.indexOf(Math.max(...levels))]!;
  }
  return best;
}

const PERIODS = 24;

/**
 * The strongest partial within `reachHz` of `nearHz`. A Hann window of so many periods of the fundamental keeps neighbours over
 * 100 dB down, and is through before a wound string's partials are; a second window half a length later gives the decay.
 */
export function measurePartial(
  samples: Float32Array,
  sampleRateHz: number,
  where: { pluckSeconds: number; fundamentalHz: number; nearHz: number; reachHz: number },
): MeasuredPartial {
  const window = hann(Math.round((PERIODS * sampleRateHz) / where.fundamentalHz));
  const start = Math.round((where.pluckSeconds + 0.01) * sampleRateHz);
  const shift = window.length >> 1;
  const at = (offset: number) => (hertz: number) =>
    windowedMagnitude(samples, start + offset, window, hertz / sampleRateHz);
  const frequencyHz = highestNear(at(0), where.nearHz, where.reachHz);
  const level = at(0)(frequencyHz);
  const decayPerSecond = (Math.log(level / at(shift)(frequencyHz)) * sampleRateHz) / shift;
  const gain = window.reduce(
    (sum, weight, i) => sum + weight * Math.exp(-decayPerSecond * ((start + i) / sampleRateHz - where.pluckSeconds)),
    0,
  );
  return { frequencyHz, amplitude: (2 * level) / gain, decayPerSecond };
}

export function decibels(ratio: number): number {
  return 20 * Math.log10(Math.abs(ratio));
}

export function cents(frequencyHz: number, referenceHz: number): number {
  return 1200 * Math.log2(frequencyHz / referenceHz);
}

export function peakOf(samples: Float32Array): number {
  return samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}

export function rmsOf(samples: Float32Array): number {
  return Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);
}
