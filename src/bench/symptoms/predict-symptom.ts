import { type Controls, type Settings, withControl } from "../../build-file/settings.ts";
import { type Listener, overall } from "./loudness.ts";
import type { SymptomCode } from "./symptom-codes.ts";

/** What an ohmmeter says of the strings: whether they lead to the sleeve, to something else, or nowhere. */
export type StringsTo = "sleeve" | "hot" | "nowhere" | "unknown";

/** A guard as it is supposed, beside the same guard sound, in one setting. */
export interface Situation {
  readonly controls: Controls;
  readonly settings: Settings;
  /** The pots that the symptom speaks of. */
  readonly tones: readonly string[];
  readonly volumes: readonly string[];
  readonly sound: Listener;
  readonly faulty: Listener;
  readonly stringsTo: StringsTo;
  /** Whether the jack's tip leads nowhere at all: an amplifier hums then. */
  readonly tipOpen: boolean;
  /** Whether metal that the sound guard grounds is off ground. */
  readonly metalOffGround: boolean;
}

/** A symptom is told without cause, or missed, as often as this (common practice, no source). */
const MISTOLD = 0.02;
/** The same of what nobody mistakes: silence, a knob that works backwards, strings that buzz when touched. */
const UNMISTAKABLE = 0.004;
/** Of sound guards, those whose player says that touching the strings quiets them (common practice, no source). */
const SHIELDED_BY_PLAYER = 0.2;

/** How likely somebody tells of a difference of so many dB, when half of all would at `threshold`. */
function told(db: number, threshold: number, spread: number, slip = MISTOLD): number {
  return slip + (1 - MISTOLD - slip) / (1 + Math.exp((threshold - db) / spread));
}

function yes(whether: boolean): number {
  return whether ? 1 - MISTOLD : UNMISTAKABLE;
}

function at({ controls, settings }: Situation, pots: readonly string[], dial: number): Settings {
  return pots.reduce((state, pot) => withControl(controls, state, pot, dial), settings);
}

/** How far each band, and all together, fall below the sound guard. */
function losses({ sound, faulty, settings }: Situation) {
  const [should, is] = [sound.in(settings), faulty.in(settings)];
  return {
    all: overall(should) - overall(is),
    lows: should.lows - is.lows,
    mids: should.mids - is.mids,
    highs: should.highs - is.highs,
  };
}

/** Level changes when pots are turned from one dial to another, in dB. */
function turned(situation: Situation, pots: readonly string[], from: number, to: number) {
  const [a, b] = [at(situation, pots, from), at(situation, pots, to)];
  const [before, after] = [situation.faulty.in(a), situation.faulty.in(b)];
  return {
    all: overall(after) - overall(before),
    lows: after.lows - before.lows,
    highs: after.highs - before.highs,
    heard: Math.max(overall(before), overall(after)),
    change: Math.max(Math.abs(after.lows - before.lows), Math.abs(after.highs - before.highs)),
  };
}

/** Under this level, in dB re a coil, nobody hears what a knob does. */
const AUDIBLE_DB = -45;

function humOverSound({ sound, faulty, settings, tipOpen, metalOffGround }: Situation): number {
  const [should, is] = [sound.in(settings), faulty.in(settings)];
  const lostSound = Math.max(0, overall(should) - overall(is));
  const gained = is.hum - should.hum + Math.min(lostSound, 6);
  return Math.max(gained, tipOpen ? 30 : 0, metalOffGround ? 10 : 0);
}

/** Probability that somebody with this guard tells of this symptom. */
const TELLERS: Readonly<Record<SymptomCode, (situation: Situation) => number>> = {
  "no-sound": (situation) => told(losses(situation).all, 30, 4, UNMISTAKABLE),
  weak: (situation) => {
    const { all } = losses(situation);
    return Math.min(told(all, 4.5, 1.5), 1 - told(all, 50, 5) + MISTOLD);
  },
  thin: (situation) => {
    const { lows, highs, mids } = losses(situation);
    return told(lows - Math.min(highs, mids), 6, 1.5);
  },
  dark: (situation) => {
    const { lows, highs } = losses(situation);
    return told(highs - lows, 4, 1);
  },
  bright: (situation) => {
    const { lows, highs } = losses(situation);
    return told(Math.min(-highs, lows - highs), 2.5, 0.8);
  },
  hum: (situation) => told(humOverSound(situation), 6, 2),
  "buzz-on-touch": ({ stringsTo }) => yes(stringsTo === "hot"),
  "touch-no-effect": ({ stringsTo }) => yes(stringsTo === "nowhere"),
  "tone-no-effect": (situation) => {
    const { change, heard } = turned(situation, situation.tones, 10, 0);
    return heard < AUDIBLE_DB ? MISTOLD : told(-change, -2, 0.6);
  },
  "tone-as-volume": (situation) => {
    const { all, lows } = turned(situation, situation.tones, 10, 0);
    return told(Math.min(-all, -lows), 12, 3);
  },
  "tone-backwards": (situation) => told(turned(situation, situation.tones, 10, 0).highs, 4, 1, UNMISTAKABLE),
  "volume-no-effect": (situation) => {
    const { change, heard } = turned(situation, situation.volumes, 10, 2);
    return heard < AUDIBLE_DB ? MISTOLD : told(-change, -2, 0.6);
  },
  "volume-backwards": (situation) => told(turned(situation, situation.volumes, 10, 1).all, 5, 1.5, UNMISTAKABLE),
  crackle: () => MISTOLD,
  "crackle-on-lever": () => MISTOLD,
  "crackle-on-lead": () => MISTOLD,
  "pot-scratchy": () => UNMISTAKABLE,
  "pot-turns": () => UNMISTAKABLE,
  howl: () => UNMISTAKABLE,
  // A sound guard does so a little in a bad room: the player is the shield. Metal off ground makes it a complaint.
  "hum-on-letting-go": ({ stringsTo, metalOffGround }) =>
    stringsTo === "hot" || stringsTo === "nowhere" ? MISTOLD : metalOffGround ? 0.8 : SHIELDED_BY_PLAYER,
  "volume-never-silent": (situation) =>
    told(overall(situation.faulty.in(at(situation, situation.volumes, 0))), -40, 4, UNMISTAKABLE),
};

export function chanceOf(code: SymptomCode, situation: Situation): number {
  return TELLERS[code](situation);
}
