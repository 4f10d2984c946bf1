/** Divides the periods of 50 and of 60 Hz into whole samples, and carries what a tap has: a few hundred hertz. */
export const TAP_RATE_HZ = 3000;

/**
 * A Gaussian never rings, so that no swing comes before the first; −3 dB at 300 Hz, −75 dB where it would fold back.
 */
const WIDTH_SECONDS = 0.442e-3;
const REACH = 4;

/** A take as taps are looked for in it, `TAP_RATE_HZ` a second; `t` seconds of the take are at index `t · TAP_RATE_HZ`. */
export interface TapSignal {
  readonly low: Float64Array;
  /** What of each sample's time was highest in the take itself, of full scale. */
  readonly tops: Float64Array;
  /** What of it the low part does not have: a click's edges, a coil's ringing. */
  readonly edges: Float64Array;
}

/** The weights of a window whose middle lies `fraction` of a sample after its own middle sample. */
function windowAt(fraction: number, sampleRateHz: number): Float64Array {
  const half = Math.ceil(REACH * WIDTH_SECONDS * sampleRateHz);
  const weights = Float64Array.from({ length: 2 * half + 1 }, (_, k) => {
    const x = (k - half - fraction) / (WIDTH_SECONDS * sampleRateHz);
    return Math.exp(-(x * x) / 2);
  });
  const sum = weights.reduce((whole, each) => whole + each, 0);
  return weights.map((each) => each / sum);
}

function weighted(samples: Float32Array, middle: number, window: Float64Array): number {
  const first = middle - (window.length - 1) / 2;
  let sum = 0;
  for (let k = 0; k < window.length; k += 1) sum += (samples[first + k] ?? 0) * window[k]!;
  return sum;
}

/** @param sampleRateHz at least `TAP_RATE_HZ` */
export function tapSignal(samples: Float32Array, sampleRateHz: number): TapSignal {
  const length = Math.floor((samples.length / sampleRateHz) * TAP_RATE_HZ);
  const [low, tops, edges] = [0, 0, 0].map(() => new Float64Array(length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const windows = new Map<number, Float64Array>();
  for (let n = 0; n < length; n += 1) {
    const phase = (n * sampleRateHz) % TAP_RATE_HZ;
    const window = windows.get(phase) ?? windowAt(phase / TAP_RATE_HZ, sampleRateHz);
    windows.set(phase, window);
    const middle = Math.floor((n * sampleRateHz) / TAP_RATE_HZ);
    low[n] = weighted(samples, middle, window);
    for (let k = middle; k < ((n + 1) * sampleRateHz) / TAP_RATE_HZ && k < samples.length; k += 1) {
      tops[n] = Math.max(tops[n]!, Math.abs(samples[k]!));
      edges[n] = Math.max(edges[n]!, Math.abs(samples[k]! - low[n]!));
    }
  }
  return { low, tops, edges };
}
