import { summarize } from "../../build-file/setting-label.ts";
import { rawSettings } from "../../build-file/settings.ts";
import { humLevelDb } from "../../response/hum.ts";
import { characterOf } from "../ear/character.ts";
import { heardDifference } from "../ear/heard-difference.ts";
import { heardSound, type Through } from "../ear/heard-sound.ts";
import { energiesFor, featuresFor, isSilent } from "../guard.ts";
import type { PairSpread } from "../tolerance/pair-spreads.ts";
import type { ComparisonRow, HeardRow, Side, Weighed } from "./comparison-row.ts";
import { type BandDifference, levelMatchedDifference } from "./difference.ts";
import { peakShift } from "./resonance-jnd.ts";
import { audibility } from "./verdict.ts";
import { rowVerdict } from "./words/row-words.ts";

/** Silence against anything has no level-matched difference; the figures then stand at 0 and the verdict says so. */
function plainFigures({ perBandDb, heard, largest, rmsDb, loudnessLu }: BandDifference, isSilence: boolean) {
  const { band } = largest;
  return {
    loudnessDifference: isSilence ? 0 : loudnessLu,
    difference: Array.from(perBandDb, (db, at) => (heard[at] && !isSilence ? db : null)),
    largest: {
      difference: isSilence ? 0 : largest.db,
      frequency: band.centre,
      band: [band.low, band.high] as const,
    },
    rms: isSilence ? 0 : rmsDb,
  };
}

/** Under this nothing is left of hum that a figure could be made of. */
const HUM_FLOOR_DB = -100;

/** One side of a row, by itself. */
function heardSide({ guard, drive, played = drive, settings }: Side, index: number, through: Through) {
  const setting = settings[index]!;
  const transfers = guard.transfers(setting);
  const plain = energiesFor(transfers, drive);
  const energies = played === drive ? plain : energiesFor(transfers, played);
  return {
    settings: rawSettings(guard.controls, setting),
    label: summarize(guard.controls, setting).label,
    plain,
    isPlainSilent: isSilent(transfers, drive, plain),
    isSilent: isSilent(transfers, played, energies),
    sound: heardSound(energies, through),
    features: featuresFor(transfers),
    humDb: humLevelDb(transfers),
  };
}

type HeardSide = ReturnType<typeof heardSide>;

function weigh(a: HeardSide, b: HeardSide): Weighed {
  const difference = heardDifference(a.sound, b.sound);
  const { perBandDb, largest, rmsDb, loudnessLu } = difference;
  const { band } = largest;
  const at = { frequency: band.centre, band: [band.low, band.high] as const };
  if (a.isSilent || b.isSilent)
    return {
      difference: Array.from(perBandDb, () => 0),
      largest: { difference: 0, ...at },
      ...{ rms: 0, loudnessDifference: 0, character: null, humDifference: null },
    };
  const hasHum = Math.min(a.humDb, b.humDb) > HUM_FLOOR_DB;
  return {
    difference: [...perBandDb],
    largest: { difference: largest.db, ...at },
    rms: rmsDb,
    loudnessDifference: loudnessLu,
    character: largest.db === 0 ? null : characterOf(a.sound, b.sound, difference),
    humDifference: hasHum ? b.humDb - a.humDb - loudnessLu : null,
  };
}

/** @param pairs of guards from the first's list, where tolerance is asked for */
export function compareRow(
  sides: readonly [Side, Side],
  index: number,
  pairs: PairSpread | undefined,
  through: Through,
): HeardRow {
  const [a, b] = sides.map((side) => heardSide(side, index, through)) as [HeardSide, HeardSide];
  const silent = [a.isSilent, b.isSilent] as const;
  const weighed = weigh(a, b);
  const oneSilent = a.isSilent !== b.isSilent;
  const audible = oneSilent ? "another-sound" : audibility(weighed.largest.difference);
  const shift = peakShift(a.features.peak, b.features.peak);
  const [cutoffA, cutoffB] = [a.features.cutoff, b.features.cutoff];
  const row: ComparisonRow = {
    settings: [a.settings, b.settings],
    label: a.label === b.label ? a.label : `${a.label} / ${b.label}`,
    ...plainFigures(levelMatchedDifference(a.plain, b.plain), a.isPlainSilent || b.isPlainSilent),
    weighed,
    features: [a.features, b.features],
    peakShift: shift,
    cutoffShift: cutoffA === null || cutoffB === null ? null : cutoffB - cutoffA,
    audible,
    verdict: rowVerdict(weighed, audible, silent, shift),
    tolerance: pairs ? { ...pairs, exceeded: oneSilent || Math.abs(weighed.largest.difference) > pairs.high } : null,
  };
  return { row, silent, sounds: [a.sound, b.sound] };
}
