import type { SwitchControl } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, type Settings, shaftWord, withControl } from "../../build-file/settings.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import type { Drive } from "../../choice/drive.ts";
import { energiesFor, Guard } from "../../choice/guard.ts";
import { type CellSound, cellSound } from "../../choice/map/cell-sound.ts";
import { SILENT_POWER } from "../../decibels.ts";
import { SettingDescriber } from "../../response/labels/setting-describer.ts";
import { mainPositions } from "../main-positions.ts";

/** One sound of a guard: its switches in one state, every dial at 10. */
export interface GuardSound {
  /** "2", or "2, lower tone up"; "" of a guard without a switch. */
  readonly position: string;
  /** Of the main switch, from 1. */
  readonly number: number;
  /** Whether no lesser switch is moved. */
  readonly isMain: boolean;
  readonly settings: Settings;
  /** What sounds, in words. */
  readonly label: string;
  readonly isHumFree: boolean;
  /** Null where nothing sounds. */
  readonly sound: CellSound | null;
}

/** Rotary switches and many push-pulls make more than anybody reads on a card. */
const MOST_SOUNDS = 60;

/** One state of a lesser switch, other than at rest. */
interface Move {
  readonly control: SwitchControl;
  readonly at: number;
  /** "lower tone up". */
  readonly moved: string;
}

/** Every way to move one of a guard's lesser switches, whether it changes anything or not. */
export function movesOf(build: Build, controls = new Controls(build)): Move[] {
  const words = partWords(build.parts);
  const lesser = controls.switches.filter((control) => control !== controls.main);
  return lesser.flatMap((control) =>
    control.table.positions.slice(1).map((_, index) => {
      const at = index + 2;
      const state = control.onShaft ? shaftWord(control, at) : String(at);
      return { control, at, moved: `${words.get(control.part) ?? control.part} ${state}` };
    }),
  );
}

export type DriveOf = (guard: Guard) => Drive;

/** The positions of the main switch, then what each lesser switch makes of those that it changes. */
export function soundsOf(build: Build, driveOf: DriveOf, checkpoint: () => void): GuardSound[] {
  const guard = new Guard(build);
  const controls = new Controls(build);
  const describer = new SettingDescriber(build);
  const drive = driveOf(guard);
  const soundIn = (settings: Settings, position: string, number: number, isMain: boolean): GuardSound => {
    checkpoint();
    const { label, hum, relation } = describer.describe(settings);
    const energies = energiesFor(guard.transfers(settings), drive);
    const silent = relation === "silent" || energies.every((energy) => energy <= SILENT_POWER);
    return {
      ...{ position, number, isMain, settings, label },
      isHumFree: hum === "cancelling",
      sound: silent ? null : cellSound(energies),
    };
  };
  const hasSwitch = controls.main !== undefined;
  const main = mainPositions(controls).map(({ settings }, index) =>
    soundIn(settings, hasSwitch ? String(index + 1) : "", index + 1, true),
  );
  const changed = movesOf(build, controls).flatMap(({ control, at, moved }) =>
    main.flatMap(({ settings, position, number, label }) => {
      const other = withControl(controls, settings, control.name, at);
      if (describer.describe(other).label === label) return [];
      return [soundIn(other, [position, moved].filter(Boolean).join(", "), number, false)];
    }),
  );
  return [...main, ...changed].slice(0, MOST_SOUNDS);
}
