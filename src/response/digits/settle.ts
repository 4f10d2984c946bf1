import { powerDecibels, SILENCE_DB, SILENT_POWER } from "../../decibels.ts";
import type { Spectrum } from "../../network/nodal-analysis.ts";
import { DEGREES_PER_RADIAN, type LevelAndPhase } from "../level-and-phase.ts";
import type { Transfers } from "../transfers.ts";
import { CURVE_DIGITS, type Digits, openPoints, SOURCE_DIGITS } from "./open-points.ts";

/** Writes level and phase of solved values into a curve at these places, each by itself, on the turn that the curve is on. */
export function settle({ magnitude, phase }: LevelAndPhase, places: readonly number[], { re, im }: Spectrum): void {
  for (const [index, place] of places.entries()) {
    const [x, y] = [re[index]!, im[index]!];
    const power = x * x + y * y;
    if (!(power > SILENT_POWER)) {
      magnitude[place] = SILENCE_DB;
      phase[place] = 0;
      continue;
    }
    const own = Math.atan2(y, x) * DEGREES_PER_RADIAN;
    magnitude[place] = powerDecibels(power);
    phase[place] = own + 360 * Math.round((phase[place]! - own) / 360);
  }
}

/** What the digits of values at some frequencies are settled by. */
export interface Settling {
  readonly frequenciesHz: Float64Array;
  readonly digits: Digits;
  /** By how much each value may be off. */
  readonly offs: Float64Array;
  /** The plain solution. */
  readonly exact: (frequenciesHz: Float64Array) => Spectrum;
}

/** Has the plain solution say what values alone leave open of the digits of their levels and phases. */
export function settleBy(
  { frequenciesHz, digits, offs, exact }: Settling,
  levels: LevelAndPhase,
  values: Spectrum,
): void {
  const open = openPoints(digits, levels, values, offs);
  if (open.length === 0) return;
  settle(levels, open, exact(Float64Array.from(open, (place) => frequenciesHz[place]!)));
}

/** For all sources together, and for each; undefined where they are the plain solution's already. */
export function settlingsOf(transfers: Transfers, frequenciesHz: Float64Array) {
  const { offPerSource, exact, sources } = transfers;
  if (!offPerSource || !exact) return undefined;
  const offs = offPerSource(frequenciesHz);
  const ofAll = new Float64Array(frequenciesHz.length);
  for (const [source, own] of offs.entries())
    for (let i = 0; i < ofAll.length; i++) ofAll[i]! += Math.abs(sources[source]!.emf) * own[i]!;
  const total: Settling = { frequenciesHz, digits: CURVE_DIGITS, offs: ofAll, exact: (some) => exact().total(some) };
  const perSource = offs.map(
    (own, source): Settling => ({
      frequenciesHz,
      digits: SOURCE_DIGITS,
      offs: own,
      exact: (some) => exact().perSource(some)[source]!,
    }),
  );
  return { total, perSource };
}
