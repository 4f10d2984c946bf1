import type { Band } from "../erb.ts";
import { distanceDb } from "../map/distance.ts";
import { SLICES } from "../slices.ts";
import type { HeardSound } from "./heard-sound.ts";

/** What two sounds differ by to the ear, second minus first: the one measure of every verdict. */
export interface HeardDifference {
  /** Of the excitation levels of every ERB band, equally loud, in dB. */
  readonly perBandDb: Float64Array;
  readonly largest: { readonly db: number; readonly band: Band };
  /** Root mean square over all bands, in dB. */
  readonly rmsDb: number;
  /** LU, left as they are. */
  readonly loudnessLu: number;
}

export function heardDifference(first: HeardSound, second: HeardSound): HeardDifference {
  const perBandDb = second.levelsDb.map((level, band) => level - first.levelsDb[band]!);
  const at = perBandDb.reduce((best, db, band) => (Math.abs(db) > Math.abs(perBandDb[best]!) ? band : best), 0);
  return {
    perBandDb,
    largest: { db: perBandDb[at]!, band: SLICES.bands[at]! },
    rmsDb: distanceDb(first.levelsDb, second.levelsDb),
    loudnessLu: second.loudnessLu - first.loudnessLu,
  };
}
