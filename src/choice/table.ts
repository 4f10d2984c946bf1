import { type SettingSummary, summarize } from "../build-file/setting-label.ts";
import { rawSettings, type Settings, type SettingValue } from "../build-file/settings.ts";
import { SILENCE_DB } from "../decibels.ts";
import { REFERENCE_HZ } from "../response/features.ts";
import { humLevelDb } from "../response/hum.ts";
import { loudnessLu } from "./band-energies.ts";
import type { Drive } from "./drive.ts";
import { curveFor, energiesFor, featuresFor, type Guard } from "./guard.ts";

/** The figures of one setting. */
export interface TableRow extends SettingSummary {
  readonly settings: Readonly<Record<string, SettingValue>>;
  /** Hz, and dB above the level at 200 Hz. */
  readonly peak: { readonly frequency: number; readonly level: number } | null;
  /** Hz. */
  readonly cutoff: number | null;
  /** dB at 200 Hz re the EMF of a coil with output 1. */
  readonly level: number;
  /** LU below the loudest setting of the table; null where silent. */
  readonly loudness: number | null;
  /** dB re the hum of one reference single coil; null where none is left. */
  readonly hum: number | null;
}

/** The figures of every setting. @param checkpoint called between settings */
export function tableOf(
  guard: Guard,
  settings: readonly Settings[],
  drive: Drive,
  checkpoint: () => void = () => {},
): TableRow[] {
  const measured = settings.map((setting) => {
    checkpoint();
    const transfers = guard.transfers(setting);
    const level = curveFor(transfers, Float64Array.of(REFERENCE_HZ))[0]!;
    const hum = humLevelDb(transfers);
    return {
      settings: rawSettings(guard.controls, setting),
      ...summarize(guard.controls, setting),
      ...featuresFor(transfers),
      level,
      loudness: loudnessLu(energiesFor(transfers, drive)),
      hum: hum > SILENCE_DB ? hum : null,
    };
  });
  const loudest = measured.reduce((top, { loudness }) => Math.max(top, loudness), SILENCE_DB);
  return measured.map((row) => ({ ...row, loudness: row.loudness > SILENCE_DB ? row.loudness - loudest : null }));
}
