import { settingsKey } from "../../build-file/settings.ts";
import { faultAt } from "../../errors.ts";
import { PositionReader } from "./positions.ts";
import type { HeightsQuestion } from "./question.ts";
import { groupsIn, type Position, type Recorded } from "./recorded.ts";
import type { MountedPickup } from "./screws.ts";

export interface Kept {
  readonly reader: PositionReader;
  /** Pickups that sound in what was recorded. */
  readonly pickups: readonly MountedPickup[];
  readonly silent: readonly MountedPickup[];
  readonly recorded: Recorded;
}

/** Rows by position, with the pickups that any of them lets through. */
export function keepRows({ build, pickups, rows }: HeightsQuestion): Kept {
  const reader = new PositionReader(build);
  const keys = [...new Set(rows.map(({ settings }) => settingsKey(settings)))];
  const settingsOf = keys.map((key) => rows.find(({ settings }) => settingsKey(settings) === key)!.settings);
  const names = pickups.map(({ name }) => name);
  const heard = new Set(
    settingsOf.flatMap((settings) => groupsIn(reader.positionIn(settings, names), names.length + 1)),
  );
  const sounds = pickups.map((_, index) => heard.has(index));
  const kept = pickups.filter((_, index) => sounds[index]);
  const movable = kept.map(({ name }) => name);
  const observations = rows.map(({ settings, gaps, levelsDb }) => ({
    position: keys.indexOf(settingsKey(settings)),
    gaps: gaps.filter((_, index) => sounds[index]),
    levelsDb,
  }));
  const positions = settingsOf.map((settings) => reader.positionIn(settings, movable));
  for (const [index, position] of positions.entries()) expectSound(rows, keys, index, position, movable.length + 1);
  return {
    reader,
    pickups: kept,
    silent: pickups.filter((_, index) => !sounds[index]),
    recorded: { pickups: movable, stringCount: reader.stringCount, positions, observations },
  };
}

/** @throws PresolderError REQUEST_INVALID where the wiring lets nothing through */
function expectSound(
  rows: HeightsQuestion["rows"],
  keys: readonly string[],
  index: number,
  position: Position,
  size: number,
): void {
  if (groupsIn(position, size).length > 0) return;
  const row = rows.findIndex(({ settings }) => settingsKey(settings) === keys[index]);
  const message = `${position.label}: no pickup reaches the jack there; expected a setting that sounds`;
  throw faultAt("REQUEST_INVALID", `levels.${row}.settings`, message);
}
