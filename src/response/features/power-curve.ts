import { SILENT_POWER } from "../../decibels.ts";
import type { Spectrum } from "../../network/nodal-analysis.ts";
import { sumAt, valueAt } from "../../network/polynomials.ts";
import { emptyParts, partsInto, powerOf, type Rational } from "../../network/rational.ts";

/** |H|² at some frequencies, and by how much it may be off at each. */
export interface Powers {
  readonly power: Float64Array;
  readonly off: Float64Array;
}

/** |H|² over frequency, in Hz, as peak and cutoff are found on it. */
export interface PowerCurve {
  sample(frequenciesHz: Float64Array): Powers;
  /** The power alone. */
  at(frequencyHz: number): number;
  /** By how much that may be off. */
  offAt(frequencyHz: number): number;
  /** d ln|H|² / d ln f, where there is a better way to it than by differences; null where it fails. */
  slope?(frequencyHz: number): number | null;
  /** The plain solution, which answers where this curve cannot; absent where this is it. */
  exact?(): PowerCurve;
}

/** A curve that is no further off than a double's digits. */
export function exactCurve(powerAt: (frequencyHz: number) => number): PowerCurve {
  return {
    at: powerAt,
    offAt: () => 0,
    sample: (frequenciesHz) => {
      const power = frequenciesHz.map(powerAt);
      for (let i = 0; i < power.length; i++) if (power[i]! < SILENT_POWER) power[i] = 0;
      return { power, off: new Float64Array(power.length) };
    },
  };
}

/** Of values that may each be off by so much. */
export function powersOf({ re, im }: Spectrum, offs: Float64Array): Powers {
  const power = re.map((value, i) => value * value + im[i]! * im[i]!);
  const off = power.map((value, i) => offs[i]! * (2 * Math.sqrt(value) + offs[i]!));
  return silenced({ power, off });
}

/** Of the five points of a difference, in ln f: far under the width of a resonance, and far above a double's last digits. */
export const SLOPE_STEP = 1e-4;

/** d ln|H|² / d ln f; a difference of fourth order where the curve has no way of its own. */
export function slopeAt(curve: PowerCurve, frequencyHz: number): number {
  const slope = curve.slope?.(frequencyHz);
  if (typeof slope === "number") return slope;
  const around = Float64Array.of(-2, -1, 1, 2).map((steps) => frequencyHz * Math.exp(steps * SLOPE_STEP));
  const [a, b, c, d] = Array.from(curve.sample(around).power, Math.log) as [number, number, number, number];
  return (a - d + 8 * (c - b)) / (12 * SLOPE_STEP);
}

/** How far a power may be off where its numerator's and denominator's magnitudes may be. */
function offOf(n: number, offN: number, d: number, offD: number): number {
  if (!(offD < d)) return Number.POSITIVE_INFINITY;
  const [most, is] = [(n + offN) / (d - offD), n / d];
  return (most - is) * (most + is);
}

/** Neighbours of a list that share a bound. */
const BLOCK = 8;
/** Up to this share of both magnitudes a power is off by hardly more than twice their sum. */
const SMALL_SHARE = 1e-3;
const TWICE_AND_MORE = 2.01;

/** Of `sample`, which never yields and hands none of it out. */
let room = emptyParts(0);

/** The power of a rational; what is surely under silence is 0. */
export function rationalCurve(rational: Rational, exact: () => PowerCurve): PowerCurve {
  const slopes = slopesOf(rational);
  const scale = (2 * Math.PI) / rational.omega0;
  return {
    exact,
    at: powerOf(rational),
    offAt: (frequencyHz) => offOfRational(rational, frequencyHz),
    slope: (frequencyHz) => slopes(frequencyHz * scale),
    sample: (frequenciesHz) => sampleOf(rational, frequenciesHz),
  };
}

function offOfRational(rational: Rational, frequencyHz: number): number {
  const x = (2 * Math.PI * frequencyHz) / rational.omega0;
  const [offN, offD] = offsAt(rational, frequencyHz);
  return offOf(
    Math.hypot(...valueAt(rational.numerator, x)),
    offN,
    Math.hypot(...valueAt(rational.denominator, x)),
    offD,
  );
}

function sampleOf(rational: Rational, frequenciesHz: Float64Array): Powers {
  room = partsInto(room, rational, frequenciesHz);
  const { nRe, nIm, dRe, dIm } = room;
  const count = frequenciesHz.length;
  const powers = { power: new Float64Array(count), off: new Float64Array(count) };
  const { power, off } = powers;
  for (let from = 0; from < count; from += BLOCK) {
    const to = Math.min(from + BLOCK, count);
    const [offN, offD] = offsAt(rational, frequenciesHz[to - 1]!);
    let leastN = Number.POSITIVE_INFINITY;
    let leastD = Number.POSITIVE_INFINITY;
    for (let i = from; i < to; i++) {
      const n = nRe[i]! * nRe[i]! + nIm[i]! * nIm[i]!;
      const d = dRe[i]! * dRe[i]! + dIm[i]! * dIm[i]!;
      if (n < leastN) leastN = n;
      if (d < leastD) leastD = d;
      power[i] = n / d;
    }
    const share = offN / Math.sqrt(leastN) + offD / Math.sqrt(leastD);
    const isSmall = share < SMALL_SHARE && leastN > 0;
    for (let i = from; i < to; i++)
      off[i] = isSmall
        ? TWICE_AND_MORE * share * power[i]!
        : offOf(Math.hypot(nRe[i]!, nIm[i]!), offN, Math.hypot(dRe[i]!, dIm[i]!), offD);
  }
  return silenced(powers);
}

function offsAt({ doubt, omega0 }: Rational, frequencyHz: number): [offN: number, offD: number] {
  if (!doubt) return [0, 0];
  const x = (2 * Math.PI * frequencyHz) / omega0;
  return [sumAt(doubt.numerator, x), sumAt(doubt.denominator, x)];
}

/** With 0 for what is surely under silence. */
function silenced(powers: Powers): Powers {
  const { power, off } = powers;
  for (let i = 0; i < power.length; i++)
    if (power[i]! + off[i]! < SILENT_POWER) {
      power[i] = 0;
      off[i] = 0;
    }
  return powers;
}

/** d ln|P|² / d ln x of a real polynomial at jx, whose own slope is Σ k·c·(jx)ᵏ. */
function logarithmicSlope(coefficients: Float64Array, x: number): number {
  let re = 0;
  let im = 0;
  let slopeRe = 0;
  let slopeIm = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) {
    const c = coefficients[k]!;
    const kept = re;
    re = c - im * x;
    im = kept * x;
    const keptSlope = slopeRe;
    slopeRe = k * c - slopeIm * x;
    slopeIm = keptSlope * x;
  }
  return (2 * (re * slopeRe + im * slopeIm)) / (re * re + im * im);
}

/** d ln|N/D|² / d ln x. */
function slopesOf({ numerator, denominator }: Rational): (x: number) => number {
  return (x) => logarithmicSlope(numerator, x) - logarithmicSlope(denominator, x);
}
