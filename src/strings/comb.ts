import type { SoundingString } from "./string-set.ts";

/** Where a coil sits and how it hears. */
export interface CoilPlace {
  /** From the bridge to the middle of the coil, in metres, halfway between the outer strings. */
  readonly distanceMetres: number;
  /** Length of string the magnet field senses, in metres; 0 is a point. */
  readonly apertureMetres: number;
  /** EMF sign: winding × magnet. */
  readonly sign: 1 | -1;
  /** EMF size; 1 is a reference single coil. */
  readonly output: number;
  /** How much farther from the bridge the coil is under the lowest string than under string 1, in metres. */
  readonly slantMetres?: number;
}

/** The coil that levels refer to: a single coil at the usual middle place; place and aperture from memory, common practice. */
export const REFERENCE_COIL: CoilPlace = { distanceMetres: 0.099, apertureMetres: 0.012, sign: 1, output: 1 };

/** Where and how broadly a string is plucked. */
export interface Pluck {
  /** From the bridge, in metres. */
  readonly placeMetres: number;
  /** Width of plectrum or finger on the string, in metres. */
  readonly widthMetres: number;
  /** How gradually the string is let go: a factor e^(−(ωτ)²/2) on every partial; at once where left out. */
  readonly releaseSeconds?: number;
}

export function sinc(x: number): number {
  return Math.abs(x) < 1e-6 ? 1 - (x * x) / 6 : Math.sin(x) / x;
}

/** f_n = n·f0·√(1 + B·n²), n ≥ 0 and not only whole. */
export function partialFrequencyHz(string: SoundingString, n: number): number {
  return n * string.fundamentalHz * Math.sqrt(1 + string.inharmonicity * n * n);
}

/** The inverse of `partialFrequencyHz`: which (fractional) partial would sound at this frequency. */
export function partialNumberAt(string: SoundingString, frequencyHz: number): number {
  const ratio = frequencyHz / string.fundamentalHz;
  // n² = (√(1 + 4Bq²) − 1) / 2B, in the form that keeps its digits as B goes to 0.
  return ratio * Math.sqrt(2 / (1 + Math.sqrt(1 + 4 * string.inharmonicity * ratio * ratio)));
}

/** From the bridge to the coil under this string, slant included. */
export function distanceUnder(string: SoundingString, coil: CoilPlace): number {
  const across = string.count > 1 ? (string.number - 1) / (string.count - 1) - 0.5 : 0;
  return coil.distanceMetres + (coil.slantMetres ?? 0) * across;
}

/**
 * What a coil senses of mode n, between −1 and 1 for output 1: sin(nπx/L) averaged over the aperture, times sign and output.
 * The part of the window beyond the bridge or the fret senses nothing, as the string there stands still.
 */
export function coilWeight(string: SoundingString, coil: CoilPlace, n: number): number {
  const distance = distanceUnder(string, coil);
  const half = coil.apertureMetres / 2;
  const from = Math.max(0, distance - half);
  const to = Math.min(string.lengthMetres, distance + half);
  if (to < from) return 0;
  const k = (n * Math.PI) / string.lengthMetres;
  const covered = half > 0 ? (to - from) / coil.apertureMetres : 1;
  return coil.sign * coil.output * covered * Math.sin((k * (from + to)) / 2) * sinc((k * (to - from)) / 2);
}

/**
 * The comb at any frequency: how much of the string's motion at `frequencyHz` this coil hears. It passes through the exact
 * weight of every partial. All coils see the same string, and a standing wave moves every place in phase or in antiphase,
 * so the weights of several coils are real, signed and add as they are: Σ weight·H is the curve as the string is heard.
 */
export function stringWeight(string: SoundingString, coil: CoilPlace, frequencyHz: number): number {
  return coilWeight(string, coil, partialNumberAt(string, frequencyHz));
}

/**
 * Velocity of mode n after a displacement pluck, the same for every coil: sin(nπp/L)/n² for the shape (Fletcher & Rossing, The
 * Physics of Musical Instruments, ch. 2), averaged over the width, times f_n/f0 for velocity. Unit: what the reference string gives
 * of the velocity 2F/πZ that a plucking force F gives a string of impedance Z, so equal force at any fret gives equal level.
 */
export function pluckWeight(string: SoundingString, pluck: Pluck, n: number): number {
  const k = (n * Math.PI) / string.lengthMetres;
  const shape = placeWeight(string, pluck, n) * sinc((k * pluck.widthMetres) / 2);
  const softness = 2 * Math.PI * partialFrequencyHz(string, n) * (pluck.releaseSeconds ?? 0);
  const released = softness === 0 ? 1 : Math.exp((-softness * softness) / 2);
  return string.level * released * (shape / n) * Math.sqrt(1 + string.inharmonicity * n * n);
}

/** Of mode n at the place of the pluck. */
export function placeWeight(string: SoundingString, pluck: Pluck, n: number): number {
  return Math.sin((n * Math.PI * pluck.placeMetres) / string.lengthMetres);
}
