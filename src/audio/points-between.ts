/** ITU-R BS.1770-4 annex 2 asks for four times 48 kHz; the same factor at higher rates only reads closer. */
const FACTOR = 4;
/** Taps each side of the point between: with the window below flat within 0.01 dB up to 0.7 and 0.04 dB up to 0.8 Nyquist. */
export const REACH = 12;
const WINDOW_POWER = 3;

const PHASES = Array.from({ length: FACTOR - 1 }, (_, phase) => interpolator((phase + 1) / FACTOR));
const BOUNDS = PHASES.map(deviationBound);
/** A point between lies beyond its two neighbours by no more than this times the sharpest bend |x[n−1] − 2x[n] + x[n+1]| in reach… */
export const BEND_SHARE = Math.max(...BOUNDS.map(({ bends }) => bends));
/** …and this times the largest step in reach, twice the largest sample at most. */
export const STEP_SHARE = Math.max(...BOUNDS.map(({ steps }) => steps));
/** It is no more than this times the largest sample in reach. */
export const SAMPLE_SHARE = Math.max(...PHASES.map((taps) => taps.reduce((sum, tap) => sum + Math.abs(tap), 0)));

/** Sinc under a power of a cosine, for the point `fraction` of the way from one sample to the next. */
function interpolator(fraction: number): Float64Array {
  const taps = Float64Array.from({ length: 2 * REACH }, (_, k) => {
    const x = Math.PI * (k - (REACH - 1) - fraction);
    return (Math.sin(x) / x) * Math.cos(x / (2 * REACH)) ** WINDOW_POWER;
  });
  const sum = taps.reduce((total, tap) => total + tap, 0);
  return taps.map((tap) => tap / sum);
}

/**
 * What an interpolator adds to the straight line between the two neighbours, summed by parts twice: Σ bends·Δ²x + steps·Δx. The
 * sound of a string bends little from sample to sample, so this bounds it far closer than Σ|taps|·max|x|.
 */
function deviationBound(taps: Float64Array, phase: number): { readonly bends: number; readonly steps: number } {
  const fraction = (phase + 1) / FACTOR;
  const line = (k: number) => (k === REACH - 1 ? 1 - fraction : k === REACH ? fraction : 0);
  let once = 0;
  let twice = 0;
  let bends = 0;
  for (let k = 0; k < taps.length; k++) {
    once += taps[k]! - line(k);
    twice += once;
    bends += Math.abs(twice);
  }
  return { bends, steps: Math.abs(twice) };
}

/** The largest magnitude between near[n + REACH − 1] and its successor, n from 0 to `count`, where one of the two exceeds `floor`. */
export function peakBetween(near: Float64Array, count: number, floor: number): number {
  let peak = 0;
  for (let n = 0; n < count; n++) {
    if (Math.abs(near[n + REACH - 1]!) <= floor && Math.abs(near[n + REACH]!) <= floor) continue;
    for (const taps of PHASES) {
      let value = 0;
      for (let k = 0; k < 2 * REACH; k++) value += taps[k]! * near[n + k]!;
      peak = Math.max(peak, Math.abs(value));
    }
  }
  return peak;
}
