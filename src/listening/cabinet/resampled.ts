import { kaiser, USUAL_TAPER } from "../../filter/band-taper.ts";

/** 132 dB down, as every filter's taper. */
const BETA = 13.6;
const WINDOW_STEPS = 4096;
const WINDOW = Float64Array.from({ length: WINDOW_STEPS + 2 }, (_, k) => kaiser(Math.min(1, k / WINDOW_STEPS), BETA));

/** Kaiser's window by a straight line between table steps, 1e-7 off. @param position 0 to 1 */
function windowAt(position: number): number {
  const at = position * WINDOW_STEPS;
  const k = Math.floor(at);
  return WINDOW[k]! + (at - k) * (WINDOW[k + 1]! - WINDOW[k]!);
}

/** Samples at the new rate by which a resampled response starts before its first sample. */
export function leadSamples(fromHz: number, toHz: number): number {
  return fromHz === toHz ? 0 : Math.ceil((USUAL_TAPER.halfLength * toHz) / Math.min(fromHz, toHz));
}

/**
 * An impulse response as the same filter at another rate, exact up to 0.82 of the lower Nyquist frequency and nothing above the whole:
 * a sinc under Kaiser's window around every new sample. Its first sample stands `leadSamples` late.
 */
export function resampled(samples: Float32Array, fromHz: number, toHz: number): Float64Array {
  if (fromHz === toHz) return Float64Array.from(samples);
  const lowest = Math.min(fromHz, toHz);
  const lead = leadSamples(fromHz, toHz);
  const cutoff = ((1 + USUAL_TAPER.exactBand) / 2) * (lowest / fromHz);
  const reach = (USUAL_TAPER.halfLength * fromHz) / lowest;
  const length = Math.ceil((samples.length * toHz) / fromHz) + 2 * lead;
  return Float64Array.from({ length }, (_, m) => {
    const centre = ((m - lead) * fromHz) / toHz;
    const first = Math.max(0, Math.ceil(centre - reach));
    const last = Math.min(samples.length - 1, Math.floor(centre + reach));
    let sum = 0;
    for (let n = first; n <= last; n++) {
      const x = Math.PI * (centre - n);
      const sinc = x === 0 ? cutoff : Math.sin(cutoff * x) / x;
      sum += samples[n]! * sinc * windowAt(Math.abs(centre - n) / reach);
    }
    return (sum * fromHz) / toHz;
  });
}
