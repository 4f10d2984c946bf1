import type { RawSettings } from "../../build-file/settings.ts";
import { SILENCE_DB } from "../../decibels.ts";
import { settingsAlong } from "../curves/axes.ts";
import { FREQUENCIES_HZ } from "../curves/frequencies.ts";
import { isSilent, referenceLevelDb } from "../curves/levels.ts";
import { fitSettings } from "../state/fit-settings.ts";
import type { KnownGuard } from "./known-guard.ts";

export interface LargestDifference {
  readonly hertz: number;
  /** Level of A over B, each over its own level at 200 Hz. */
  readonly decibels: number;
  readonly settings: RawSettings;
  /** Which of the two gives no sound while the other does; then the level over it means nothing. */
  readonly silent?: "A" | "B";
}

/** Where a guitar and its loudspeaker sound: below is hum, above a guitar speaker lets little through (common practice, no source). */
const FROM_HZ = 80;
const TO_HZ = 8000;

/** Where two builds differ most in one setting. */
export function largestDifference(a: KnownGuard, b: KnownGuard, settings: RawSettings): LargestDifference {
  const magnitudeOf = (guard: KnownGuard) => guard.curveIn(fitSettings(guard.reading, settings)).magnitude;
  const [inA, inB] = [magnitudeOf(a), magnitudeOf(b)];
  const [silentA, silentB] = [isSilent(inA), isSilent(inB)];
  if (silentA !== silentB)
    return { hertz: FROM_HZ, decibels: silentA ? SILENCE_DB : -SILENCE_DB, settings, silent: silentA ? "A" : "B" };
  const offset = referenceLevelDb(inA) - referenceLevelDb(inB);
  let largest: LargestDifference = { hertz: FROM_HZ, decibels: 0, settings };
  for (const [index, hertz] of FREQUENCIES_HZ.entries()) {
    if (hertz < FROM_HZ || hertz > TO_HZ) continue;
    const decibels = inA[index]! - inB[index]! - offset;
    if (Math.abs(decibels) > Math.abs(largest.decibels)) largest = { hertz, decibels, settings };
  }
  return largest;
}

/** The largest difference over every position × tone. */
export function largestOfAll(a: KnownGuard, b: KnownGuard, settings: RawSettings): LargestDifference {
  const positions = settingsAlong(a.reading, settings, "position");
  const all = (positions.length > 0 ? positions : [settings]).flatMap((each) => {
    const tones = settingsAlong(a.reading, each, "tone");
    return tones.length > 0 ? tones : [each];
  });
  return all
    .map((each) => largestDifference(a, b, each))
    .reduce((best, each) => (Math.abs(each.decibels) > Math.abs(best.decibels) ? each : best));
}
