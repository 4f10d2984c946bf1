import { mainPositions } from "../../bench/main-positions.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, type Settings, settingsKey, withControl } from "../../build-file/settings.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import { MAX_TAKES } from "../../limits.ts";
import { CircuitMaker } from "../../response/circuit.ts";
import { Point, Unknowns } from "../model/point.ts";
import { type Rig, rigUnknowns, USUAL_INPUT } from "../model/rig-unknowns.ts";
import { unknownsOf } from "../model/unknowns.ts";
import { viewOf } from "../model/view.ts";

/** A take to make at the jack. */
export interface PlannedSetting {
  readonly settings: Settings;
  /** What is to be set otherwise than at rest: a control and its value. */
  readonly moved: readonly { readonly control: string; readonly to: number }[];
  readonly why: string;
}

export const USUAL_RIG: Rig = {
  resistorOhms: 47e3,
  tolerance: 0.01,
  inputOhms: USUAL_INPUT.ohms,
  inputFarads: USUAL_INPUT.farads,
  known: { ohms: false, farads: false },
  isGainKnown: false,
};

/** Says whether the jack sees any difference between two settings. */
function comparing(build: Build): (a: Settings, b: Settings) => boolean {
  const maker = new CircuitMaker(build);
  const shapes = new Map<string, string>();
  const nominal = new Point(new Unknowns([...rigUnknowns(USUAL_RIG), ...unknownsOf(build, [])], USUAL_RIG));
  const shapeOf = (settings: Settings) => {
    const key = settingsKey(settings);
    const shape = shapes.get(key) ?? viewOf(maker, settings, nominal).shape;
    shapes.set(key, shape);
    return shape;
  };
  return (a, b) => shapeOf(a) !== shapeOf(b);
}

/** Every setting worth a take, the most telling first; nobody need go through all of them. */
function* settingsOf(build: Build, checkpoint: () => void): Generator<PlannedSetting> {
  const controls = new Controls(build);
  const differ = comparing(build);
  const words = partWords(build.parts);
  const called = (part: string) => `the ${words.get(part) ?? part}`;
  const main = controls.main?.name;
  const positions = mainPositions(controls).map(({ settings }) => settings);
  const inMain = (settings: Settings) =>
    main === undefined ? [] : [{ control: main, to: settings.switches[main] ?? 1 }];
  for (const settings of positions) {
    const why = main === undefined ? "everything at rest" : "what this position lets in, all knobs at 10";
    yield { settings, moved: inMain(settings), why };
  }
  function* whereActs(control: string, to: number, why: string): Generator<PlannedSetting> {
    for (const settings of positions) {
      checkpoint();
      const there = withControl(controls, settings, control, to);
      if (!differ(settings, there)) continue;
      yield { settings: there, moved: [...inMain(settings), { control, to }], why };
      return;
    }
  }
  for (const { name, part, onShaft, table } of controls.switches) {
    if (name === main) continue;
    const why = `what ${called(part)}${onShaft ? "'s switch" : ""} does`;
    for (let to = 2; to <= table.positions.length; to++) yield* whereActs(name, to, why);
  }
  for (const name of controls.pots) {
    yield* whereActs(name, 0, `the end of ${called(name)}'s track`);
    yield* whereActs(name, 5, `${called(name)}'s taper, and what hangs on it`);
  }
}

/** The takes to make, and whether they are all that would tell something. */
export interface Plan {
  readonly takes: readonly PlannedSetting[];
  readonly isWhole: boolean;
}

/**
 * The takes at the jack that tell a guard with the least work: every position of the main switch, every switch on a shaft or beside it in
 * each of its other positions once, and every knob at 5 and at 0 where it acts.
 */
export function planOf(build: Build, { checkpoint }: Checkpoint = NO_CHECKPOINT): Plan {
  const takes: PlannedSetting[] = [];
  for (const planned of settingsOf(build, () => checkpoint())) {
    if (takes.length === MAX_TAKES) return { takes, isWhole: false };
    takes.push(planned);
  }
  return { takes, isWhole: true };
}

export const planFor = (build: Build, checkpoint?: Checkpoint): readonly PlannedSetting[] =>
  planOf(build, checkpoint).takes;

/** What a plan leaves out that is longer than may be sent. */
export const planNotes = ({ isWhole }: Plan): string[] =>
  isWhole
    ? []
    : [
        `The plan ends at ${MAX_TAKES} takes, the most that one examination takes: what other settings alone show is not looked at.`,
      ];
