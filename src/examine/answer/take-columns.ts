import { chiSquareTail } from "../../bench/faults/likelihood/chi-square.ts";
import type { Take } from "../takes/take.ts";
import type { Evidence, Subject } from "../weigh/evidence.ts";
import { ExciterEvidence } from "../weigh/exciter-evidence.ts";
import { FLOOR } from "../weigh/floor.ts";
import { JackEvidence } from "../weigh/jack-evidence.ts";

/** A take as a curve, beside the guard as drawn. */
export interface TakeColumns {
  readonly frequencies: readonly number[];
  readonly magnitudes: readonly number[];
  readonly degrees: readonly number[];
  /** Fractions. */
  readonly errors: readonly number[];
  readonly expected: { readonly magnitudes: readonly number[]; readonly degrees: readonly number[] };
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
  const { squares, degrees } = evidence.weigh(drawn, FLOOR);
  return {
    frequencies: [...take.frequenciesHz],
    magnitudes: sizes(measured),
    degrees: angles(measured),
    errors: isJack
      ? jackErrors(take)
      : Array.from(take.re, (x, i) => take.sd[i]! / Math.max(1e-12, Math.hypot(x, take.im[i]!))),
    expected: { magnitudes: sizes(expected), degrees: angles(expected) },
    agrees:
      squares - evidence.weigh(best, FLOOR).squares < MOST_GAINED &&
      chiSquareTail(squares, Math.max(1, Math.round(degrees))) >= LEAST_FIT,
  };
}
