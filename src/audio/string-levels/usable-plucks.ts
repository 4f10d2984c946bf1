import type { PresolderError } from "../../errors.ts";
import { signalFault } from "../wav-fault.ts";

/** From the pluck: past the plectrum's click, and a second long. */
export const LEVEL_FROM_SECONDS = 0.05;
export const LEVEL_TO_SECONDS = 1.05;

export interface StringLevelsQuestion {
  readonly strings: number;
  /** In a row on each string; undefined takes what the number of plucks found comes to. */
  readonly plucks: number | undefined;
  readonly order: "low-to-high" | "high-to-low";
}

export function unusable(message: string): PresolderError {
  return signalFault("SOUND_UNUSABLE", message);
}

/** "1.23 s". */
export function at(seconds: number): string {
  return `${seconds.toFixed(2)} s`;
}

/** How many times each string was plucked. @throws PresolderError SOUND_UNUSABLE where the plucks found are no whole number of times */
export function timesPlucked(starts: readonly number[], { strings, plucks }: StringLevelsQuestion): number {
  const expected = plucks === undefined ? `${strings}, or as many for each string` : `${strings * plucks}`;
  const places = starts.length === 0 ? "" : ` (at ${starts.map(at).join(", ")})`;
  const times = plucks ?? starts.length / strings;
  if (Number.isInteger(times) && times > 0 && starts.length === strings * times) return times;
  const remedy =
    starts.length < strings * (plucks ?? 1)
      ? "leave a moment of quiet at the start, damp each string before the next is plucked, pluck evenly and well over the room's noise"
      : "leave out knocks and handling noise, and pluck every string as often as the others";
  throw unusable(
    `${starts.length} ${starts.length === 1 ? "pluck was" : "plucks were"} found${places}; expected ${expected}: ${remedy}`,
  );
}

/** @throws PresolderError SOUND_UNUSABLE where plucks overlap, or the last is cut off */
export function expectApart(starts: readonly number[], seconds: number): void {
  const close = starts.findIndex((start, index) => index > 0 && start - starts[index - 1]! < LEVEL_TO_SECONDS);
  if (close > 0)
    throw unusable(
      `the plucks at ${at(starts[close - 1]!)} and ${at(starts[close]!)} overlap; expected ${LEVEL_TO_SECONDS} s or more between two: let each ring for a second and a half`,
    );
  const last = starts.at(-1)!;
  if (last + LEVEL_TO_SECONDS > seconds)
    throw unusable(
      `the recording ends ${at(seconds - last)} after its last pluck; expected ${LEVEL_TO_SECONDS} s or more: let it ring before you stop`,
    );
}
