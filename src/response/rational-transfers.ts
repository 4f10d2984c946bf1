import { SILENCE_DB } from "../decibels.ts";
import { doubtfulPoints, isBeyondDoubt, offsOf } from "../network/doubt.ts";
import type { Spectrum } from "../network/nodal-analysis.ts";
import { type RationalTransfers, weightedRational } from "../network/parametric.ts";
import { doubtOf, type Polynomial } from "../network/polynomials.ts";
import { emptyParts, partsInto, quotientOf, type Rational } from "../network/rational.ts";
import { openPointsOf } from "./digits/open-points.ts";
import { settle } from "./digits/settle.ts";
import { exactCurve, rationalCurve } from "./features/power-curve.ts";
import { type LevelAndPhase, levelAndPhaseOf, magnitudeDb, unwrappedPhaseDegrees } from "./level-and-phase.ts";
import type { CoilSource } from "./pickup-elements.ts";
import { shieldedTransfers } from "./shielded-transfers.ts";
import type { Transfers } from "./transfers.ts";

function silence(length: number): Spectrum {
  return { re: new Float64Array(length), im: new Float64Array(length) };
}

function silentCurve(length: number): LevelAndPhase {
  return { magnitude: new Float64Array(length).fill(SILENCE_DB), phase: new Float64Array(length) };
}

const SILENT_CURVE = exactCurve(() => 0);

/** Writes what the plain solution says into the values at these places. */
function replace(values: Spectrum, places: readonly number[], by: Spectrum): void {
  for (const [index, place] of places.entries()) {
    values.re[place] = by.re[index]!;
    values.im[place] = by.im[index]!;
  }
}

const at = (frequenciesHz: Float64Array, places: readonly number[]) =>
  Float64Array.from(places, (place) => frequenciesHz[place]!);

/** Of evaluations, which never yield and hand none of it out. */
let room = emptyParts(0);

/** One rational a source. */
function perSourceOf<T>(
  { numerators, denominator, omega0 }: RationalTransfers,
  of: (rational: Rational | null) => T,
): T[] {
  const whole = (numerator: Polynomial): Rational => ({
    numerator: numerator.coefficients,
    denominator: denominator.coefficients,
    omega0,
    doubt: { numerator: doubtOf(numerator), denominator: below },
  });
  const below = doubtOf(denominator);
  return numerators.map((numerator) => of(numerator && whole(numerator)));
}

function spectraOf(rational: RationalTransfers, frequenciesHz: Float64Array, exact: () => Transfers): Spectrum[] {
  const doubtful = new Set<number>();
  const spectra = perSourceOf(rational, (each) => {
    if (!each) return silence(frequenciesHz.length);
    room = partsInto(room, each, frequenciesHz);
    for (const place of doubtfulPoints(each, room, frequenciesHz)) doubtful.add(place);
    return quotientOf(room, frequenciesHz.length);
  });
  if (doubtful.size === 0) return spectra;
  const places = [...doubtful];
  const solved = exact().perSource(at(frequenciesHz, places));
  for (const [source, spectrum] of spectra.entries())
    if (rational.numerators[source]) replace(spectrum, places, solved[source]!);
  return spectra;
}

/**
 * Transfers evaluated from polynomials, and solved where their rounding could show.
 * @param solve the same transfers, solved frequency by frequency
 */
export function rationalTransfers(
  bare: RationalTransfers,
  sources: readonly CoilSource[],
  solve: () => Transfers,
): Transfers {
  const rational = shieldedTransfers(bare, sources);
  const emfs = sources.map((source) => source.emf);
  let solved: Transfers | undefined;
  const exact = () => {
    solved ??= solve();
    return solved;
  };
  /** The values whose parts are in `room`, the doubtful ones solved. */
  const settled = (frequenciesHz: Float64Array, doubtful: readonly number[], weights: readonly number[]) => {
    const values = quotientOf(room, frequenciesHz.length);
    if (doubtful.length > 0) replace(values, doubtful, exact().total(at(frequenciesHz, doubtful), weights));
    return values;
  };
  return {
    sources,
    exact,
    perSource: (frequenciesHz) => spectraOf(rational, frequenciesHz, exact),
    offPerSource: (frequenciesHz) =>
      perSourceOf(rational, (each) => {
        if (!each) return new Float64Array(frequenciesHz.length);
        room = partsInto(room, each, frequenciesHz);
        return offsOf(each, room, frequenciesHz);
      }),
    total: (frequenciesHz, weights = emfs) => {
      const total = weightedRational(rational, weights);
      if (!total) return silence(frequenciesHz.length);
      room = partsInto(room, total, frequenciesHz);
      return settled(frequenciesHz, doubtfulPoints(total, room, frequenciesHz), weights);
    },
    levelAndPhase: (frequenciesHz) => {
      const total = weightedRational(rational, emfs);
      if (!total) return silentCurve(frequenciesHz.length);
      room = partsInto(room, total, frequenciesHz);
      const { magnitude, phase, least } = levelAndPhaseOf(room, frequenciesHz.length);
      const isSure = isBeyondDoubt(total, frequenciesHz.at(-1) ?? 0, least);
      const doubtful = isSure ? [] : doubtfulPoints(total, room, frequenciesHz);
      const open = [...new Set([...doubtful, ...openPointsOf(total, room, frequenciesHz, { magnitude, phase })])];
      if (open.length === 0) return { magnitude, phase };
      const solved = exact().total(at(frequenciesHz, open), emfs);
      // One that was taken for silence is on no turn yet.
      if (doubtful.length === 0 && open.every((place) => magnitude[place]! > SILENCE_DB)) {
        settle({ magnitude, phase }, open, solved);
        return { magnitude, phase };
      }
      const values = quotientOf(room, frequenciesHz.length);
      replace(values, open, solved);
      const levels = { magnitude: magnitudeDb(values), phase: unwrappedPhaseDegrees(values) };
      settle(levels, open, solved);
      return levels;
    },
    power: (weights = emfs) => {
      const total = weightedRational(rational, weights);
      return total ? rationalCurve(total, () => exact().power(weights)) : SILENT_CURVE;
    },
  };
}
