import { decibels, NEPERS_OF_AMPLITUDE_PER_DB, SILENCE_DB, SILENT_AMPLITUDE } from "../../decibels.ts";
import type { Spectrum } from "../../network/nodal-analysis.ts";
import { sumAt } from "../../network/polynomials.ts";
import type { Rational, RationalParts } from "../../network/rational.ts";
import { DEGREES_PER_RADIAN, type LevelAndPhase } from "../level-and-phase.ts";

interface Rounding {
  /** After the point. */
  readonly places: number;
  readonly steps: number;
}

/** To what an answer rounds decibels and degrees. */
export interface Digits {
  readonly level: Rounding;
  readonly phase: Rounding;
}

const to = (places: number): Rounding => ({ places, steps: 10 ** places });

export const CURVE_DIGITS: Digits = { level: to(4), phase: to(3) };
/** Finer, since they are there to be added up, and may cancel. */
export const SOURCE_DIGITS: Digits = { level: to(5), phase: to(4) };
/** What a running sum along a list rounds, dB and degrees. */
const RUNNING = 1e-9;
/** How far level and phase are off for a share of itself by which a value is. */
const LEVEL_PER_SHARE = 1.01 / NEPERS_OF_AMPLITUDE_PER_DB;
const PHASE_PER_SHARE = 1.01 * DEGREES_PER_RADIAN;
/** Up to which these hold. */
const SMALL_SHARE = 1e-3;
/** Neighbours that one bound serves. */
const BLOCK = 16;
/** Over it, and off by a small share, nothing is silence. */
const SURELY_HEARD_DB = decibels(1.2 * SILENT_AMPLITUDE);

/** Whether a number of steps that may be so far off may be rounded to another one. */
function isNearTie(steps: number, off: number): boolean {
  const above = steps - Math.floor(steps) - 0.5;
  return above <= off && above >= -off;
}

/** @param share of itself by which the value may be off */
function isOpenAt(digits: Digits, level: number, phase: number, share: number): boolean {
  return (
    isNearTie(level * digits.level.steps, (LEVEL_PER_SHARE * share + RUNNING) * digits.level.steps) ||
    isNearTie(phase * digits.phase.steps, (PHASE_PER_SHARE * share + RUNNING) * digits.phase.steps)
  );
}

function isOpen(digits: Digits, { magnitude, phase }: LevelAndPhase, i: number, size: number, off: number): boolean {
  if (off === 0) return false;
  if (Math.abs(size - SILENT_AMPLITUDE) <= off) return true;
  if (size < SILENT_AMPLITUDE) return false;
  const share = off / size;
  // The running sums may differ from the value where it crosses into silence.
  return !(share < SMALL_SHARE) || magnitude[i] === SILENCE_DB || isOpenAt(digits, magnitude[i]!, phase[i]!, share);
}

/**
 * Where the digits that an answer shows might not be the same however the curve was computed; the plain solution should answer
 * there (A. Ziv, Fast evaluation of elementary mathematical functions with correctly rounded last bit, ACM TOMS 17, 1991).
 * @param offs by how much each value may be off
 * @returns indexes
 */
export function openPoints(digits: Digits, levels: LevelAndPhase, { re, im }: Spectrum, offs: Float64Array): number[] {
  const open: number[] = [];
  for (let i = 0; i < offs.length; i++)
    if (isOpen(digits, levels, i, Math.hypot(re[i]!, im[i]!), offs[i]!)) open.push(i);
  return open;
}

/** As `openPoints`, of a curve that is a rational along rising frequencies. @param parts values of numerator and denominator there */
export function openPointsOf(
  { doubt, omega0 }: Rational,
  { nRe, nIm, dRe, dIm }: RationalParts,
  frequenciesHz: Float64Array,
  levels: LevelAndPhase,
): number[] {
  const open: number[] = [];
  if (!doubt) return open;
  const { magnitude, phase } = levels;
  const scale = (2 * Math.PI) / omega0;
  const count = frequenciesHz.length;
  for (let from = 0; from < count; from += BLOCK) {
    const to = Math.min(from + BLOCK, count);
    let leastN = Number.POSITIVE_INFINITY;
    let leastD = Number.POSITIVE_INFINITY;
    for (let i = from; i < to; i++) {
      const n = nRe[i]! * nRe[i]! + nIm[i]! * nIm[i]!;
      const d = dRe[i]! * dRe[i]! + dIm[i]! * dIm[i]!;
      if (n < leastN) leastN = n;
      if (d < leastD) leastD = d;
    }
    const highest = frequenciesHz[to - 1]! * scale;
    const offN = sumAt(doubt.numerator, highest);
    const offD = sumAt(doubt.denominator, highest);
    const share = offN / Math.sqrt(leastN) + offD / Math.sqrt(leastD);
    const isSmall = share < SMALL_SHARE / 2;
    for (let i = from; i < to; i++) {
      if (isSmall && magnitude[i]! > SURELY_HEARD_DB && !isOpenAt(CURVE_DIGITS, magnitude[i]!, phase[i]!, share))
        continue;
      const d = Math.hypot(dRe[i]!, dIm[i]!);
      const size = Math.hypot(nRe[i]!, nIm[i]!) / d;
      const off = offD < d ? (offN + size * offD) / (d - offD) : Number.POSITIVE_INFINITY;
      if (isOpen(CURVE_DIGITS, levels, i, size, off)) open.push(i);
    }
  }
  return open;
}
