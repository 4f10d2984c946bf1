import { soundingCoils } from "../../response/labels/position-coils.ts";
import { PositionProbe } from "../../response/labels/position-probe.ts";
import { humWord } from "../../response/labels/setting-describer.ts";
import type { Drive } from "../drive.ts";
import { heardDifference } from "../ear/heard-difference.ts";
import { heardIfAny } from "../ear/heard-sound.ts";
import { energiesFor, type Guard } from "../guard.ts";
import { type CellSound, cellSound } from "../map/cell-sound.ts";
import { cellsOf, volumeDown } from "./cells.ts";
import { distinctSounds } from "./distinct-sounds.ts";

/** What a guard can do. */
export interface Score {
  /** Sounds that a usual listener tells apart side by side, tones at 10 and at 0. */
  readonly sounds: number;
  /** How many of them can be had without hum. */
  readonly humFree: number;
  /** LU between the loudest and the softest main position, everything at rest, to a tenth. */
  readonly unevenness: number;
  /** Largest difference heard in any band between volume at 5 and at 10, in the first position, dB to a tenth. */
  readonly trebleLoss: number;
  /** How many settings were heard; those that are silent do not count. */
  readonly cells: number;
}

const tenths = (value: number) => Math.round(value * 10) / 10;

interface Heard {
  readonly sound: CellSound;
  readonly isHumFree: boolean;
  readonly isPlain: boolean;
}

/** @param drive of the build's coils as they are plucked in their places */
export function soundsOf(guard: Guard, drive: Drive): Omit<Score, "trebleLoss"> {
  const probe = new PositionProbe(guard.build);
  const heard = cellsOf(guard.controls).flatMap(({ settings, open, toneDial, isPlain }): Heard[] => {
    // As the switches stand: pickups alike out of phase cancel in a common drive, but not as strings are heard in two places.
    const coils = soundingCoils(probe, open);
    if (coils.length === 0) return [];
    const isHumFree = toneDial === 10 && humWord(coils) === "cancelling";
    const sound = cellSound(energiesFor(guard.transfers(settings), drive));
    return [{ sound, isHumFree, isPlain: isPlain && toneDial === 10 }];
  });
  const groups = distinctSounds(heard.map(({ sound }) => sound));
  const levels = heard.filter(({ isPlain }) => isPlain).map(({ sound }) => sound.loudnessLu);
  return {
    sounds: groups.length,
    humFree: groups.filter((cells) => cells.some((cell) => heard[cell]!.isHumFree)).length,
    unevenness: levels.length < 2 ? 0 : tenths(Math.max(...levels) - Math.min(...levels)),
    cells: heard.length,
  };
}

export function trebleLossOf(guard: Guard, drive: Drive): number {
  const [up, down] = [guard.controls.atRest, volumeDown(guard.controls)].map((settings) =>
    heardIfAny(energiesFor(guard.transfers(settings), drive)),
  );
  return up && down ? tenths(Math.abs(heardDifference(up, down).largest.db)) : 0;
}

/** Whether one guard comes before another: more sounds, then more of them without hum, then levels and treble more even. */
export function compareScores(a: Score, b: Score): number {
  return b.sounds - a.sounds || b.humFree - a.humFree || a.unevenness - b.unevenness || a.trebleLoss - b.trebleLoss;
}
