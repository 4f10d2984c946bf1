import type { Build } from "../../build-file/schema.ts";
import { type RawSettings, rawSettings } from "../../build-file/settings.ts";
import { energiesFor, Guard, isSilent } from "../../choice/guard.ts";
import { cellSettings, type ToneStops } from "../../choice/map/cell-settings.ts";
import { type CellSound, cellSound } from "../../choice/map/cell-sound.ts";
import type { Playing } from "../../render/playing.ts";
import { ResponseEngine } from "../../response/engine.ts";
import { phraseDrive } from "./phrase-drive.ts";

/** A guard's cells, each with its sound. */
export interface GuardCells {
  readonly sounding: readonly { readonly settings: RawSettings; readonly sound: CellSound }[];
  /** Cells that give no sound. */
  readonly silent: number;
  readonly isCut: boolean;
}

/** A harness without pickups has no cells. */
export function guardCells(build: Build, tones: ToneStops, playing: Playing): GuardCells {
  const engine = new ResponseEngine(build);
  const guard = new Guard(build, engine);
  if (guard.sources.length === 0) return { sounding: [], silent: 0, isCut: false };
  const { settings, isCut } = cellSettings(guard.controls, tones);
  engine.plan(settings);
  const drive = phraseDrive(guard, playing);
  const sounding = settings.flatMap((setting) => {
    const transfers = guard.transfers(setting);
    if (isSilent(transfers)) return [];
    return [{ settings: rawSettings(guard.controls, setting), sound: cellSound(energiesFor(transfers, drive)) }];
  });
  return { sounding, silent: settings.length - sounding.length, isCut };
}
