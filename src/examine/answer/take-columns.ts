import { chiSquareTail } from "../../bench/faults/likelihood/chi-square.ts";
import { decibels } from "../../decibels.ts";
import type { Take } from "../takes/take.ts";
import type { Evidence, Subject } from "../weigh/evidence.ts";
import { ExciterEvidence } from "../weigh/exciter-evidence.ts";
import { FLOOR } from "../weigh/floor.ts";
import { JackEvidence } from "../weigh/jack-evidence.ts";

/** Sizes of one take to lay over each other, at its frequencies. */
export interface TakeCurves {
  /** Of a take at the jack, impedance; of an exciter's, what reaches the jack. */
  readonly unit: "dB re 1 kΩ" | "dB re full scale";
  readonly measured: readonly number[];
  readonly drawn: readonly number[];
  /** Of the likeliest departure; null where that is the drawing itself. */
  readonly best: readonly number[] | null;
}

/** A take as a curve, beside the guard as drawn. */
export interface TakeColumns {
  readonly frequencies: readonly number[];
  readonly magnitudes: readonly number[];
  readonly degrees: readonly number[];
  /** Fractions. */
  readonly errors: readonly number[];
  readonly expected: { readonly magnitudes: readonly number[]; readonly degrees: readonly number[] };
  readonly curves: TakeCurves;
  readonly agrees: boolean;
}

/** A take that a sound guard would leave so far off once in so many is not the drawing's. */
const LEAST_FIT = 1e-3;
const DEGREES = 180 / Math.PI;
/** What a share of nearly all means can be anything above this, in ohms. */
const MOST_OHMS = 1e9;

interface Curve {
  readonly re: ArrayLike<number>;
  readonly im: ArrayLike<number>;
}

/** Z = R·t / (1 − t). */
function ohmsOf({ re, im }: Curve, resistorOhms: number): Curve {
  const points = Array.from(re, (x, i) => {
    const [a, b] = [1 - x, -im[i]!];
    const norm = Math.max(a * a + b * b, (resistorOhms / MOST_OHMS) ** 2);
    return [(resistorOhms * (x * a + im[i]! * b)) / norm, (resistorOhms * (im[i]! * a - x * b)) / norm] as const;
  });
  return { re: points.map(([x]) => x), im: points.map(([, y]) => y) };
}

const REFERENCE_OHMS = 1000;
/** Of full scale, what lies under every recording's noise: a silence has no level in dB. */
const LEAST_SHARE = 1e-6;
/** A shorted jack's ohms have none either. */
const LEAST_OHMS = 1e-3;

const sizes = ({ re, im }: Curve) => Array.from(re, (x, i) => Math.hypot(x, im[i]!));
const angles = ({ re, im }: Curve) => Array.from(re, (x, i) => DEGREES * Math.atan2(im[i]!, x));

/** Relative error of Z: that of t over 1 − t. */
function jackErrors({ re, im, sd }: Take): number[] {
  return Array.from(re, (x, i) => sd[i]! / Math.max(1e-9, Math.hypot(x, im[i]!) * Math.hypot(1 - x, im[i]!)));
}

function expectedOf(evidence: Evidence, take: Take, subject: Subject): Curve {
  if (evidence instanceof JackEvidence) return evidence.predict(subject);
  if (evidence instanceof ExciterEvidence) return evidence.heard(subject, take);
  return take;
}

function levelsOf(curve: Curve, isJack: boolean): number[] {
  const [reference, least] = isJack ? [REFERENCE_OHMS, LEAST_OHMS] : [1, LEAST_SHARE];
  return sizes(curve).map((size) => decibels(Math.max(size, least) / reference));
}

/** A take that the best answer accounts for better by this, as chi-square, is not the drawing's either. */
const MOST_GAINED = 12;

/**
 * @param drawn the guard as drawn, at the parts that these takes speak for
 * @param best the guard that accounts for the takes best
 */
export function takeColumns(take: Take, evidence: Evidence, drawn: Subject, best: Subject): TakeColumns {
  const { resistorOhms } = drawn.point.unknowns.rig;
  const isJack = take.through === "jack";
  const shown = (curve: Curve) => (isJack ? ohmsOf(curve, resistorOhms) : curve);
  const [measured, expected] = [shown(take), shown(expectedOf(evidence, take, drawn))];
  const found = best === drawn ? null : shown(expectedOf(evidence, take, best));
  const { squares, degrees } = evidence.weigh(drawn, FLOOR);
  return {
    frequencies: [...take.frequenciesHz],
    magnitudes: sizes(measured),
    degrees: angles(measured),
    errors: isJack
      ? jackErrors(take)
      : Array.from(take.re, (x, i) => take.sd[i]! / Math.max(1e-12, Math.hypot(x, take.im[i]!))),
    expected: { magnitudes: sizes(expected), degrees: angles(expected) },
    curves: {
      unit: isJack ? "dB re 1 kΩ" : "dB re full scale",
      measured: levelsOf(measured, isJack),
      drawn: levelsOf(expected, isJack),
      best: found && levelsOf(found, isJack),
    },
    agrees:
      squares - evidence.weigh(best, FLOOR).squares < MOST_GAINED &&
      chiSquareTail(squares, Math.max(1, Math.round(degrees))) >= LEAST_FIT,
  };
}
