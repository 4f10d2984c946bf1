import { kaiser } from "../../filter/band-taper.ts";

/** What folds back and what is mirrored stays this far down (Kaiser's formula for the window). */
const ATTENUATION_DB = 100;
const BETA = 0.1102 * (ATTENUATION_DB - 8.7);

/**
 * A sinc under Kaiser's window, its gain at 0 Hz one. @param cutoff of the Nyquist frequency @param centre of its symmetry, in samples
 */
export function windowedSinc(length: number, cutoff: number, centre: number): Float64Array {
  const reach = Math.max(centre, length - 1 - centre) + 1;
  const taps = Float64Array.from({ length }, (_, n) => {
    const x = Math.PI * (n - centre);
    return (x === 0 ? cutoff : Math.sin(cutoff * x) / x) * kaiser((n - centre) / reach, BETA);
  });
  const sum = taps.reduce((total, tap) => total + tap, 0);
  return taps.map((tap) => tap / sum);
}
