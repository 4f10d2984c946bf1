import type { Build } from "../../../build-file/schema.ts";
import type { MountedPickup } from "../screws.ts";
import { heightHabit } from "./height-habit.ts";
import { PlayedGuard } from "./played-guard.ts";
import { type ToneHabit, toneHabit } from "./tone-habit.ts";
import { type VolumeHabit, volumeHabit } from "./volume-habit.ts";

/** What changes for the player when one guard takes another's place. */
export interface Habits {
  readonly heights: readonly string[];
  readonly volume: readonly VolumeHabit[];
  readonly tone: readonly ToneHabit[];
  readonly notes: readonly string[];
}

/** Rotary switches have a dozen positions; more are not stepped through by ear. */
const MOST_POSITIONS = 12;

/**
 * Position by position, from the guard that is in to the one that goes in; levels and cutoffs are the build files' own, at equal
 * heights. @param checkpoint called between positions
 */
export function habitsBetween(
  from: Build,
  to: Build,
  measured: readonly MountedPickup[],
  checkpoint: () => void = () => {},
): Habits {
  const [old, now] = [new PlayedGuard(from), new PlayedGuard(to)];
  const counts = [old.positions.length, now.positions.length] as const;
  const shared = Array.from({ length: Math.min(...counts, MOST_POSITIONS) }, (_, index) => index);
  const each = <Habit>(tell: (index: number) => Habit) =>
    shared.map((index) => {
      checkpoint();
      return tell(index);
    });
  const notes =
    counts[0] === counts[1]
      ? []
      : [
          `The old guard had ${counts[0]} positions and the new one has ${counts[1]}: only those that both have are compared, by number.`,
        ];
  return {
    heights: heightHabit(from, to, measured),
    volume: each((index) => volumeHabit(old, now, index)),
    tone: each((index) => toneHabit(old, now, index)),
    notes: [
      ...notes,
      "Levels and cutoffs are the build files' own, both guards at equal heights; your heights come on top.",
    ],
  };
}
