import { summarize } from "../../build-file/setting-label.ts";
import { rawSettings, type Settings, type SettingValue } from "../../build-file/settings.ts";
import type { Features } from "../../response/features.ts";
import type { Drive } from "../drive.ts";
import type { Band } from "../erb.ts";
import { curveFor, energiesFor, featuresFor, type Guard, isSilent } from "../guard.ts";
import { SLICES } from "../slices.ts";
import type { DrawOptions } from "../tolerance/draws.ts";
import { type PairSpread, pairSpreads } from "../tolerance/pair-spreads.ts";
import { type BandDifference, levelMatchedDifference } from "./difference.ts";
import { type PeakShift, peakShift } from "./resonance-jnd.ts";
import { type Audibility, audibility, inDecibels, VERDICT_BASIS, verdictOn } from "./verdict.ts";

/** One of two things compared: a guard, what drives its coils, and its settings row by row. */
export interface Side {
  readonly guard: Guard;
  readonly drive: Drive;
  readonly settings: readonly Settings[];
}

export interface ComparisonRow {
  readonly settings: readonly [Record<string, SettingValue>, Record<string, SettingValue>];
  readonly label: string;
  readonly loudnessDifference: number;
  /** dB, second minus first, per band of `bands`; null where the band is too soft to be heard. */
  readonly difference: readonly (number | null)[];
  readonly largest: {
    readonly difference: number;
    readonly frequency: number;
    readonly band: readonly [number, number];
  };
  readonly rms: number;
  readonly features: readonly [Features, Features];
  readonly peakShift: PeakShift | null;
  readonly cutoffShift: number | null;
  readonly audible: Audibility;
  readonly verdict: string;
  /** What two guards built from the first's list differ by, and whether this difference is larger; null where not asked for. */
  readonly tolerance: (PairSpread & { readonly exceeded: boolean }) | null;
}

export interface Comparison {
  readonly weighting: string;
  readonly bands: readonly Band[];
  readonly rows: readonly ComparisonRow[];
  readonly verdict: string;
  readonly basis: string;
}

/** Silence against anything has no level-matched difference; the figures then stand at 0 and the verdict says so. */
function figures(difference: BandDifference) {
  if (difference.silent.includes(true))
    return { per: difference.heard.map(() => null), largest: 0, rms: 0, loudness: 0 };
  const per = Array.from(difference.perBandDb, (db, band) => (difference.heard[band] ? db : null));
  return { per, largest: difference.largest.db, rms: difference.rmsDb, loudness: difference.loudnessLu };
}

/** A row, and which of its two sides gives no sound at all. */
interface Heard {
  readonly row: ComparisonRow;
  readonly silent: BandDifference["silent"];
}

function compareRow(a: Side, b: Side, index: number, pairs: PairSpread | undefined): Heard {
  const [settingsA, settingsB] = [a.settings[index]!, b.settings[index]!];
  const [first, second] = [a.guard.transfers(settingsA), b.guard.transfers(settingsB)];
  const difference = {
    ...levelMatchedDifference(energiesFor(first, a.drive), energiesFor(second, b.drive)),
    silent: [isSilent(first), isSilent(second)] as const,
  };
  const features = [featuresFor(first), featuresFor(second)] as const;
  const shift = peakShift(features[0].peak, features[1].peak);
  const { per, largest, rms, loudness } = figures(difference);
  const { band } = difference.largest;
  const [labelA, labelB] = [summarize(a.guard.controls, settingsA).label, summarize(b.guard.controls, settingsB).label];
  const [cutoffA, cutoffB] = [features[0].cutoff, features[1].cutoff];
  const oneSilent = difference.silent[0] !== difference.silent[1];
  const row: ComparisonRow = {
    settings: [rawSettings(a.guard.controls, settingsA), rawSettings(b.guard.controls, settingsB)],
    label: labelA === labelB ? labelA : `${labelA} / ${labelB}`,
    loudnessDifference: loudness,
    difference: per,
    largest: { difference: largest, frequency: band.centre, band: [band.low, band.high] },
    rms,
    features,
    peakShift: shift,
    cutoffShift: cutoffA === null || cutoffB === null ? null : cutoffB - cutoffA,
    audible: oneSilent ? "another-sound" : audibility(largest),
    verdict: verdictOn(difference, shift),
    tolerance: pairs ? { ...pairs, exceeded: oneSilent || Math.abs(largest) > pairs.high } : null,
  };
  return { row, silent: difference.silent };
}

/** Silence against sound is more than any difference of level. */
function size({ row, silent }: Heard): number {
  return silent[0] === silent[1] ? Math.abs(row.largest.difference) : Number.POSITIVE_INFINITY;
}

/** Nothing where a side is silent: two guards of one list are silent together. */
function toleranceWords({ row: { tolerance }, silent }: Heard): string {
  if (!tolerance || silent.includes(true)) return "";
  const spread = `two guards built from the same list differ by up to ${inDecibels(tolerance.high)} (19 of 20 pairs)`;
  return tolerance.exceeded ? `; it is more than tolerance: ${spread}` : `; tolerance alone does as much: ${spread}`;
}

function overall(all: readonly Heard[]): string {
  const sentence = (heard: Heard) => `With ${heard.row.label} ${heard.row.verdict}${toleranceWords(heard)}.`;
  const most = all.reduce((best, heard) => (size(heard) > size(best) ? heard : best));
  if (all.length === 1) return sentence(most);
  const least = all.reduce((best, heard) => (size(heard) < size(best) ? heard : best));
  const audible = all.filter(({ row }) => row.audible !== "none").length;
  const count =
    audible === 0
      ? `No difference can be heard in any of ${all.length} settings.`
      : `A difference can be heard in ${audible} of ${all.length} settings.`;
  return least === most ? `${sentence(most)} ${count}` : `${sentence(least)} ${sentence(most)} ${count}`;
}

/**
 * Compares two guards, row by row of their settings.
 * The differences are level matched, second minus first, per ERB band, weighted by the drive's spectrum within each band.
 * @param tolerance how many guards to draw from the first's list, or null to leave tolerance out
 */
export function compare(a: Side, b: Side, tolerance: DrawOptions | null): Comparison {
  const pairs = tolerance ? pairSpreads(a.guard, a.settings, a.drive, tolerance) : [];
  const heard = a.settings.map((_, index) => compareRow(a, b, index, pairs[index]));
  const rows = heard.map(({ row }) => row);
  return { weighting: a.drive.name, bands: SLICES.bands, rows, verdict: overall(heard), basis: VERDICT_BASIS };
}

/** Both curves of one row in dB, for drawing. */
export function curvesOfRow(
  a: Side,
  b: Side,
  index: number,
  frequenciesHz: Float64Array,
): [Float64Array, Float64Array] {
  return [
    curveFor(a.guard.transfers(a.settings[index]!), frequenciesHz),
    curveFor(b.guard.transfers(b.settings[index]!), frequenciesHz),
  ];
}
