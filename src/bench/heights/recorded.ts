import type { Settings } from "../../build-file/settings.ts";
import type { Gaps } from "./gaps.ts";

/** A setting whose levels were recorded, or that is asked about. */
export interface Position {
  readonly settings: Settings;
  readonly label: string;
  /** By string, from string 1: mean squares as `openStringEnergies` has them, a group a movable pickup and one of all the rest. */
  readonly energies: readonly Float64Array[];
}

/** Six open strings, say, in one position at one height of all pickups. */
export interface Observation {
  /** Index of the position. */
  readonly position: number;
  /** Of every movable pickup. */
  readonly gaps: readonly Gaps[];
  /** By string, from string 1. */
  readonly levelsDb: readonly number[];
}

export interface Recorded {
  /** The movable pickups, in the order of their groups. */
  readonly pickups: readonly string[];
  readonly stringCount: number;
  readonly positions: readonly Position[];
  readonly observations: readonly Observation[];
}

/** Under this share of a position's power a pickup only leaks in: 30 dB. */
const LEAKS_BELOW = 1e-3;

/** What each group gives of a position's power, were it alone. */
function sharesIn({ energies }: Position, groupCount: number): number[] {
  const powers = Array.from({ length: groupCount }, (_, group) =>
    energies.reduce((sum, matrix) => sum + matrix[group * groupCount + group]!, 0),
  );
  const total = powers.reduce((sum, power) => sum + power, 0);
  return powers.map((power) => (total > 0 ? power / total : 0));
}

/** The groups that sound in a position. */
export function groupsIn(position: Position, groupCount: number): number[] {
  return sharesIn(position, groupCount).flatMap((share, group) => (share > LEAKS_BELOW ? [group] : []));
}
