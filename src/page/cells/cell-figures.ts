import type { Build } from "../../build-file/schema.ts";
import { parseSettings, type RawSettings } from "../../build-file/settings.ts";
import { curveFor, energiesFor, featuresFor, Guard, isSilent } from "../../choice/guard.ts";
import { cellSound } from "../../choice/map/cell-sound.ts";
import { SILENCE_DB } from "../../decibels.ts";
import type { Playing } from "../../render/playing.ts";
import { humLevelDb } from "../../response/hum.ts";
import { SettingDescriber } from "../../response/labels/setting-describer.ts";
import { FREQUENCIES_HZ } from "../curves/frequencies.ts";
import { phraseDrive } from "./phrase-drive.ts";

/** What is told of one cell beside others. */
export interface CellFigures {
  /** What sounds: "bridge + middle, parallel, in phase, hum cancelling". */
  readonly label: string;
  /** dB at `FREQUENCIES_HZ`. */
  readonly magnitude: Float64Array;
  /** Hz, and dB above the level at 200 Hz. */
  readonly peak: { readonly frequency: number; readonly level: number } | null;
  /** LU above a zero that all cells share; null where silent. */
  readonly loudnessLu: number | null;
  /** dB beside one reference single coil; null where none is left. */
  readonly hum: number | null;
  /** Hz; null where silent. */
  readonly brightnessHz: number | null;
}

/** @throws PresolderError for settings that the guard has not, or a harness without pickups */
export function cellFigures(build: Build, raw: RawSettings, playing: Playing): CellFigures {
  const guard = new Guard(build);
  const settings = parseSettings(guard.controls, raw);
  const transfers = guard.transfers(settings);
  const sound = isSilent(transfers) ? undefined : cellSound(energiesFor(transfers, phraseDrive(guard, playing)));
  const hum = humLevelDb(transfers);
  return {
    label: new SettingDescriber(build).describe(settings).label,
    magnitude: curveFor(transfers, FREQUENCIES_HZ),
    peak: featuresFor(transfers).peak,
    loudnessLu: sound?.loudnessLu ?? null,
    hum: hum > SILENCE_DB ? hum : null,
    brightnessHz: sound?.brightnessHz ?? null,
  };
}
