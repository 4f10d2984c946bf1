import { parseSettings, type RawSettings, rawSettings } from "../../build-file/settings.ts";
import type { Reading } from "../state/reading.ts";
import { settingWords } from "./cell-words.ts";

/** The id of the guard on the bench where the shelf has not the same. */
export const ON_BENCH = "bench";

/** A guard that can be heard here: the one on the bench, or one of the shelf. */
export interface GuardName {
  /** Its id on the shelf, or `ON_BENCH`. */
  readonly id: string;
  /** No two have the same. */
  readonly name: string;
}

/** One that was read. */
export interface GuardOnHand extends GuardName {
  readonly reading: Reading;
}

/** A guard in one setting. */
export interface Cell {
  /** The same for the same guard in the same setting. */
  readonly key: string;
  readonly guard: GuardOnHand;
  /** Every control by its own name. */
  readonly settings: RawSettings;
}

/** @param settings that the guard has; what is left out is at rest */
export function cellOf(guard: GuardOnHand, settings: RawSettings): Cell {
  const { controls } = guard.reading;
  const whole = rawSettings(controls, parseSettings(controls, settings));
  return { key: `${guard.id} ${JSON.stringify(whole)}`, guard, settings: whole };
}

/** "Guard A, position 4". */
export function cellName({ guard, settings }: Cell): string {
  return `${guard.name}, ${settingWords(guard.reading, settings)}`;
}
