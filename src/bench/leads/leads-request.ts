import type { OwnMeter } from "../meter/own/own-meter.ts";
import type { KickWord } from "./priors.ts";
import type { Pole } from "./question.ts";

/** What a person found out about a pickup whose leads nobody can name. */
export interface LeadsRequest {
  readonly leads: readonly string[];
  readonly coils?: 1 | 2 | undefined;
  readonly rows?: readonly string[] | undefined;
  readonly readings: readonly {
    readonly between: readonly [string, string];
    /** null: open. */
    readonly ohms: number | null;
    readonly low?: number | null | undefined;
    readonly high?: number | null | undefined;
  }[];
  readonly kicks: readonly {
    readonly row: string;
    /** The meter's + and −. */
    readonly between: readonly [string, string];
    readonly kick: KickWord;
  }[];
  readonly compass: readonly {
    readonly row: string;
    /** The end of the needle that is drawn. */
    readonly draws: Pole;
  }[];
  /** "none": the pickup has no cover, base plate or braid. */
  readonly metal: "none" | readonly { readonly lead: string; readonly ohms: number | null }[];
  /** °C. */
  readonly temperature: number;
  /** What the readings were taken with, where the person said which. */
  readonly meter?: OwnMeter | undefined;
}

/** A needle that goes as the guard says it must, +1, or the other way, −1: what the person calls up is then down. */
export type KickSense = 1 | -1;
