import type { Between } from "./paths.ts";
import { COIL_LN_DEVIATION, COIL_LN_OHMS, COIL_RATIOS, MISREAD_LN_SPAN, MISREAD_READING } from "./priors.ts";
import type { CoilCount } from "./question.ts";

export type CoilBetween = Exclude<Between, "open" | "joint">;

/** A finite reading and the coils that it went through. */
export interface CoilReading {
  readonly lnOhms: number;
  readonly deviation: number;
  readonly between: CoilBetween;
}

/** What readings say of the coils' resistances, with m the mean of both ln ohms and d their difference. */
export interface CoilOhms {
  /** ln of the joint density of the readings in ln ohms. */
  readonly lnEvidence: number;
  readonly mean: number;
  readonly difference: number;
  /** Covariance of mean and difference: [mm, md, dd]. */
  readonly covariance: readonly [number, number, number];
  /** Indexes of readings that no coil explains; they count as misread. */
  readonly missed: readonly number[];
}

interface Predicted {
  readonly value: number;
  /** Derivative by the difference; that by the mean is 1. */
  readonly slope: number;
}

const LN_MISREAD = Math.log(MISREAD_READING) - Math.log(MISREAD_LN_SPAN);
const LN_RIGHT = Math.log(1 - MISREAD_READING);
/** Beyond this many standard deviations a reading is a slip; so far off it costs more than to be one. */
const SLIP_DEVIATIONS = 5;
const STEPS = 30;

/** ln ohms that a meter shows: of two in a row m + ln 2cosh(d/2), side by side m − ln 2cosh(d/2). */
function predicted(between: CoilBetween, coils: CoilCount, m: number, d: number): Predicted {
  if (coils === 1) return { value: m, slope: 0 };
  if (between === "first") return { value: m + d / 2, slope: 0.5 };
  if (between === "second") return { value: m - d / 2, slope: -0.5 };
  const lnCosh = Math.abs(d) / 2 + Math.log1p(Math.exp(-Math.abs(d)));
  const slope = Math.tanh(d / 2) / 2;
  return between === "sum" ? { value: m + lnCosh, slope } : { value: m - lnCosh, slope: -slope };
}

const averageOf = (values: readonly number[]) =>
  values.length === 0 ? undefined : values.reduce((sum, each) => sum + each, 0) / values.length;

/** A place to begin at, from which the steps cannot run to the wrong one of two coils. */
function begin(readings: readonly CoilReading[]): [number, number] {
  const of = (kind: CoilBetween) => averageOf(readings.flatMap((each) => (each.between === kind ? [each.lnOhms] : [])));
  const [sum, sideBySide] = [of("sum"), of("side by side")];
  const rest = (known: number | undefined) => {
    if (known === undefined) return undefined;
    const ohms = Math.exp(known);
    if (sum !== undefined && Math.exp(sum) > ohms) return Math.log(Math.exp(sum) - ohms);
    if (sideBySide !== undefined && Math.exp(sideBySide) < ohms)
      return -Math.log(Math.exp(-sideBySide) - Math.exp(-known));
    return known;
  };
  const [ownFirst, ownSecond] = [of("first"), of("second")];
  const first = ownFirst ?? rest(ownSecond);
  const second = ownSecond ?? rest(ownFirst);
  if (first !== undefined && second !== undefined) return [(first + second) / 2, first - second];
  if (sum !== undefined) return [sum - Math.LN2, 0];
  return [sideBySide === undefined ? COIL_LN_OHMS : sideBySide + Math.LN2, 0];
}

interface Summit {
  readonly lnDensity: number;
  readonly m: number;
  readonly d: number;
  readonly precision: readonly [number, number, number];
}

/** The likeliest resistances by Gauss–Newton steps: prior and readings are normal in m and d, and almost linear. */
function climb(readings: readonly CoilReading[], coils: CoilCount, ratioDeviation: number): Summit {
  let [m, d] = begin(readings);
  const priorM = COIL_LN_DEVIATION ** -2;
  const priorD = ratioDeviation ** -2;
  let precision: [number, number, number] = [priorM, 0, priorD];
  for (let step = 0; step < STEPS; step++) {
    const push = [priorM * (COIL_LN_OHMS - m), -priorD * d] as [number, number];
    precision = [priorM, 0, priorD];
    for (const { lnOhms, deviation, between } of readings) {
      const { value, slope } = predicted(between, coils, m, d);
      const weight = deviation ** -2;
      push[0] += weight * (lnOhms - value);
      push[1] += weight * slope * (lnOhms - value);
      precision[0] += weight;
      precision[1] += weight * slope;
      precision[2] += weight * slope * slope;
    }
    const determinant = precision[0] * precision[2] - precision[1] ** 2;
    const stepM = (precision[2] * push[0] - precision[1] * push[1]) / determinant;
    const stepD = (precision[0] * push[1] - precision[1] * push[0]) / determinant;
    const bound = Math.min(1, 1 / Math.max(Math.abs(stepM), Math.abs(stepD), 1e-300));
    m += bound * stepM;
    d += bound * stepD;
    if (Math.abs(stepM) + Math.abs(stepD) < 1e-9) break;
  }
  const lnNormal = (difference: number, deviation: number) =>
    -0.5 * (difference / deviation) ** 2 - Math.log(deviation * Math.sqrt(2 * Math.PI));
  const lnDensity =
    lnNormal(m - COIL_LN_OHMS, COIL_LN_DEVIATION) +
    lnNormal(d, ratioDeviation) +
    readings.reduce(
      (sum, { lnOhms, deviation, between }) =>
        sum + LN_RIGHT + lnNormal(lnOhms - predicted(between, coils, m, d).value, deviation),
      0,
    );
  return { lnDensity, m, d, precision };
}

function worstMissed(readings: readonly CoilReading[], coils: CoilCount, { m, d }: Summit): number {
  let worst = -1;
  let farthest = SLIP_DEVIATIONS;
  for (const [index, { lnOhms, deviation, between }] of readings.entries()) {
    const off = Math.abs(lnOhms - predicted(between, coils, m, d).value) / deviation;
    if (off > farthest) [worst, farthest] = [index, off];
  }
  return worst;
}

/** Laplace's method: the integral over both resistances of a density that is normal but for the sum's slight bend. */
function explained(readings: readonly CoilReading[], coils: CoilCount, ratioDeviation: number): CoilOhms {
  const kept = readings.map((reading, index) => ({ reading, index }));
  const missed: number[] = [];
  for (;;) {
    const left = kept.map(({ reading }) => reading);
    const summit = climb(left, coils, ratioDeviation);
    const worst = worstMissed(left, coils, summit);
    if (worst >= 0) {
      missed.push(kept[worst]!.index);
      kept.splice(worst, 1);
      continue;
    }
    const [mm, md, dd] = summit.precision;
    const determinant = mm * dd - md * md;
    return {
      lnEvidence: summit.lnDensity + Math.log(2 * Math.PI) - 0.5 * Math.log(determinant) + missed.length * LN_MISREAD,
      mean: summit.m,
      difference: summit.d,
      covariance: [dd / determinant, -md / determinant, mm / determinant],
      missed,
    };
  }
}

/** The resistances behind readings, and how well any explain them: coils wound alike and coils wound unlike, by their priors. */
export function coilOhms(readings: readonly CoilReading[], coils: CoilCount): CoilOhms {
  const each = (coils === 1 ? COIL_RATIOS.slice(0, 1) : COIL_RATIOS).map(({ weight, deviation }) => {
    const found = explained(readings, coils, deviation);
    return { ...found, lnEvidence: found.lnEvidence + (coils === 1 ? 0 : Math.log(weight)) };
  });
  const best = each.reduce((a, b) => (b.lnEvidence > a.lnEvidence ? b : a));
  const lnEvidence =
    best.lnEvidence + Math.log(each.reduce((sum, one) => sum + Math.exp(one.lnEvidence - best.lnEvidence), 0));
  return { ...best, lnEvidence };
}

/** ln ohms between two places, and their standard deviation, the meter's own left out. */
export function expectedOhms(
  { mean, difference, covariance: [mm, md, dd] }: CoilOhms,
  between: CoilBetween,
  coils: CoilCount,
): { readonly lnOhms: number; readonly deviation: number } {
  const { value, slope } = predicted(between, coils, mean, difference);
  return { lnOhms: value, deviation: Math.sqrt(mm + 2 * slope * md + slope * slope * dd) };
}
