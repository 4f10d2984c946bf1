import { DB_PER_NEPER_OF_POWER, powerDecibels, SILENCE_DB, SILENT_POWER } from "../decibels.ts";
import type { LeastSquares } from "../network/doubt.ts";
import type { Spectrum } from "../network/nodal-analysis.ts";
import type { RationalParts } from "../network/rational.ts";

export const DEGREES_PER_RADIAN = 180 / Math.PI;

/** A sum smaller than this share of what was summed is the rounding that is left when sources cancel. */
const CANCELLED = 1e-13;

/** The weighted sum of spectra of equal length. Where they cancel to their last digits the sum is silence. */
export function weightedSum(spectra: readonly Spectrum[], weights: readonly number[]): Spectrum {
  const length = spectra[0]?.re.length ?? 0;
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  for (let i = 0; i < length; i++) {
    let size = 0;
    for (const [index, spectrum] of spectra.entries()) {
      const termRe = weights[index]! * spectrum.re[i]!;
      const termIm = weights[index]! * spectrum.im[i]!;
      re[i]! += termRe;
      im[i]! += termIm;
      size += Math.abs(termRe) + Math.abs(termIm);
    }
    if (Math.abs(re[i]!) + Math.abs(im[i]!) > CANCELLED * size) continue;
    re[i] = 0;
    im[i] = 0;
  }
  return { re, im };
}

/** Level in dB and phase in degrees over a list of frequencies. */
export interface LevelAndPhase {
  readonly magnitude: Float64Array;
  readonly phase: Float64Array;
}

/** Up to this argument five terms of the series for the inverse hyperbolic tangent are exact to 1e-11. */
const SMALL_STEP = 0.1;

/** Decibels from a power a to b, for z = (b − a)/(b + a): ln(b/a) = 2 artanh z, and its series is cheaper than a logarithm. */
function stepDecibels(z: number): number {
  const q = z * z;
  return 2 * DB_PER_NEPER_OF_POWER * z * (1 + q * (1 / 3 + q * (1 / 5 + q * (1 / 7 + q / 9))));
}

/** Magnitude in dB; silence is SILENCE_DB. */
export function magnitudeDb({ re, im }: Spectrum): Float64Array {
  const level = new Float64Array(re.length);
  let lastPower = 0;
  let lastLevel = SILENCE_DB;
  for (let i = 0; i < level.length; i++) {
    const x = re[i]!;
    const y = im[i]!;
    const power = x * x + y * y;
    if (!(power > SILENT_POWER)) {
      level[i] = SILENCE_DB;
      lastLevel = SILENCE_DB;
      continue;
    }
    const z = (power - lastPower) / (power + lastPower);
    if (z < SMALL_STEP && z > -SMALL_STEP && lastLevel > SILENCE_DB) lastLevel += stepDecibels(z);
    else lastLevel = powerDecibels(power);
    lastPower = power;
    level[i] = lastLevel;
  }
  return level;
}

/** Up to this tangent six terms of the series for the arc tangent are exact to 1e-11. */
const SMALL_TANGENT = 0.15;

/** atan2 for the small turns between neighbouring frequencies, at a fraction of its cost. */
function turn(cross: number, dot: number): number {
  const t = cross / dot;
  if (!(dot > 0 && t < SMALL_TANGENT && t > -SMALL_TANGENT)) return Math.atan2(cross, dot);
  const q = t * t;
  return t * (1 - q * (1 / 3 - q * (1 / 5 - q * (1 / 7 - q * (1 / 9 - q / 11)))));
}

/**
 * Phase in degrees, unwrapped along the list: no step between neighbours exceeds 180°. Silence has the phase 0,
 * and what sounds beyond it goes on from the last that sounded.
 */
export function unwrappedPhaseDegrees({ re, im }: Spectrum): Float64Array {
  const phase = new Float64Array(re.length);
  let lastRe = 1;
  let lastIm = 0;
  let angle = 0;
  for (let i = 0; i < phase.length; i++) {
    const x = re[i]!;
    const y = im[i]!;
    if (!(x * x + y * y > SILENT_POWER)) continue;
    angle += turn(lastRe * y - lastIm * x, lastRe * x + lastIm * y);
    lastRe = x;
    lastIm = y;
    phase[i] = angle * DEGREES_PER_RADIAN;
  }
  return phase;
}

/**
 * Level and phase of a rational from the values of its parts, as `magnitudeDb` and `unwrappedPhaseDegrees` give them of its values, in one pass with a single
 * division for both steps from a frequency to the next; and the parts' least squares, which the same pass meets.
 */
export function levelAndPhaseOf(
  { nRe, nIm, dRe, dIm }: RationalParts,
  count: number,
): LevelAndPhase & { readonly least: LeastSquares } {
  const magnitude = new Float64Array(count);
  const phase = new Float64Array(count);
  // Copies, since a module's constants are looked up anew at every use once bundled, which halves this loop's speed.
  const [silentPower, floor, degrees] = [SILENT_POWER, SILENCE_DB, DEGREES_PER_RADIAN];
  const dbPerNeper = 2 * DB_PER_NEPER_OF_POWER;
  // Four terms of either series are exact to 1e-12 up to 0.06.
  const smallSquare = 0.06 ** 2;
  const [third, fifth, seventh] = [1 / 3, 1 / 5, 1 / 7];
  // Beyond these a product has lost digits, or has none left.
  const [shareLow, shareHigh] = [1e-280, 1e280];
  // The last frequency that sounds. N·conj(D) has the value's phase; |N|² / |D|² is its power.
  let lastRe = 1;
  let lastIm = 0;
  let lastN = 0;
  let lastD = 1;
  let nepers = 0;
  let angle = 0;
  let leastN = Number.POSITIVE_INFINITY;
  let leastM = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const a = nRe[i]!;
    const b = nIm[i]!;
    const c = dRe[i]!;
    const d = dIm[i]!;
    const n = a * a + b * b;
    const m = c * c + d * d;
    if (n < leastN) leastN = n;
    if (m < leastM) leastM = m;
    if (!(n > silentPower * m)) {
      magnitude[i] = floor;
      continue;
    }
    const re = a * c + b * d;
    const im = b * c - a * d;
    const cross = lastRe * im - lastIm * re;
    const dot = lastRe * re + lastIm * im;
    const now = n * lastD;
    const before = lastN * m;
    const sum = now + before;
    const share = 1 / (dot * sum);
    const t = cross * sum * share;
    const z = (now - before) * dot * share;
    const tt = t * t;
    const zz = z * z;
    if (tt + zz < smallSquare && share > shareLow && share < shareHigh) {
      angle += t * (1 - tt * (third - tt * (fifth - tt * seventh)));
      nepers += z * (1 + zz * (third + zz * (fifth + zz * seventh)));
    } else {
      angle += Math.atan2(cross, dot);
      nepers = 0.5 * Math.log(n / m);
    }
    lastRe = re;
    lastIm = im;
    lastN = n;
    lastD = m;
    magnitude[i] = nepers * dbPerNeper;
    phase[i] = angle * degrees;
  }
  return { magnitude, phase, least: { n: leastN, d: leastM } };
}
