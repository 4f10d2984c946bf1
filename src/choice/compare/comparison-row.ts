import type { Settings, SettingValue } from "../../build-file/settings.ts";
import type { Features } from "../../response/features.ts";
import type { Drive } from "../drive.ts";
import type { Character } from "../ear/character.ts";
import type { HeardSound } from "../ear/heard-sound.ts";
import type { Guard } from "../guard.ts";
import type { PairSpread } from "../tolerance/pair-spreads.ts";
import type { PeakShift } from "./resonance-jnd.ts";
import type { Audibility } from "./verdict.ts";

/** One of two things compared: a guard, what drives its coils, and its settings row by row. */
export interface Side {
  readonly guard: Guard;
  /** What the plain figures are weighed by. */
  readonly drive: Drive;
  /** What is heard, where it is another: the strings as they are played. */
  readonly played?: Drive;
  readonly settings: readonly Settings[];
}

interface Largest {
  readonly difference: number;
  readonly frequency: number;
  readonly band: readonly [number, number];
}

/** What is heard to differ, second minus first: the strings played, through the speaker, over masking and threshold. */
export interface Weighed {
  /** dB of every band of `bands`, 0 where neither is heard. */
  readonly difference: readonly number[];
  readonly largest: Largest;
  readonly rms: number;
  readonly loudnessDifference: number;
  /** What the second is beside the first; null where nothing differs or a side is silent. */
  readonly character: Character | null;
  /** dB of hum, second minus first, both equally loud; null where a side has none or is silent. */
  readonly humDifference: number | null;
}

export interface ComparisonRow {
  readonly settings: readonly [Record<string, SettingValue>, Record<string, SettingValue>];
  readonly label: string;
  readonly loudnessDifference: number;
  /** dB, second minus first, per band of `bands`; null where the band is too soft to be heard. */
  readonly difference: readonly (number | null)[];
  readonly largest: Largest;
  readonly rms: number;
  readonly weighed: Weighed;
  readonly features: readonly [Features, Features];
  readonly peakShift: PeakShift | null;
  readonly cutoffShift: number | null;
  /** Of the largest difference weighed. */
  readonly audible: Audibility;
  readonly verdict: string;
  /** What two guards built from the first's list differ by, weighed, and whether this difference is larger; null where not asked for. */
  readonly tolerance: (PairSpread & { readonly exceeded: boolean }) | null;
}

/** A row, which of its two sides gives no sound at all, and how each is heard. */
export interface HeardRow {
  readonly row: ComparisonRow;
  readonly silent: readonly [boolean, boolean];
  readonly sounds: readonly [HeardSound, HeardSound];
}

/** Silence against sound is more than any difference of level. */
export function sizeOf({ row, silent }: Pick<HeardRow, "row" | "silent">): number {
  return silent[0] === silent[1] ? Math.abs(row.weighed.largest.difference) : Number.POSITIVE_INFINITY;
}
