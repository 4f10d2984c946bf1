import type { BeepTold, FoundLug, SwitchQuestion } from "../../../bench/switch-finder/question.ts";
import type { SwitchAnswer } from "../../../contract/bench/switch-finder.ts";
import { MAX_SWITCH_LUGS, MAX_SWITCH_POSITIONS } from "../../../limits.ts";

/** A switch on the bench: its lugs numbered row by row, and what was heard of it. */
export interface Finding {
  readonly lugs: readonly FoundLug[];
  readonly positions: number;
  readonly beeps: readonly BeepTold[];
  /** Undefined while it is worked out. */
  readonly answer: SwitchAnswer | undefined;
}

/** Rows of lugs, each in the middle: columns are half a lug apart, so that rows of other lengths stand between. */
export function lugsInRows(counts: readonly number[]): FoundLug[] {
  const widest = Math.max(...counts);
  let number = 0;
  return counts.flatMap((count, y) =>
    Array.from({ length: count }, (_, index) => {
      number += 1;
      return { name: String(number), spot: { x: 2 * index + widest - count, y } };
    }),
  );
}

/** "4 4" or "4, 4": how many lugs sit in each row. @throws Error that says what was expected */
export function readRows(text: string): number[] {
  const counts = text
    .split(/[\s,;+]+/)
    .filter(Boolean)
    .map(Number);
  const sum = counts.reduce((total, count) => total + count, 0);
  if (counts.length === 0 || counts.some((count) => !Number.isInteger(count) || count < 1))
    throw new Error("Say how many lugs are in each row, from the top: 4, 4");
  if (sum < 2 || sum > MAX_SWITCH_LUGS || counts.some((count) => 2 * count > MAX_SWITCH_LUGS))
    throw new Error(`These are ${sum} lugs; expected 2 to ${MAX_SWITCH_LUGS}, at most half of that in a row.`);
  return counts;
}

/** @throws Error that says what was expected */
export function readPositions(text: string): number {
  const positions = Number(text);
  if (!Number.isInteger(positions) || positions < 1 || positions > MAX_SWITCH_POSITIONS)
    throw new Error(`Count the positions that the handle stays in: 1 to ${MAX_SWITCH_POSITIONS}.`);
  return positions;
}

/** The chance that a touch is misheard is taken as the service takes it. */
const MISHEARD = 0.01;

export function questionOf({ lugs, positions, beeps }: Finding): SwitchQuestion {
  return { lugs, positions, beeps, errors: MISHEARD, moves: {} };
}
