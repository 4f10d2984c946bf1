import { mainPositions } from "../../bench/main-positions.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, type Settings, settingsKey, withControl } from "../../build-file/settings.ts";
import { partWords } from "../../build-file/words/part-words.ts";
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

/**
 * The takes at the jack that tell a guard with the least work: every position of the main switch, every switch on a shaft or beside it in
 * each of its other positions once, and every knob at 5 and at 0 where it acts.
 */
export function planFor(build: Build): PlannedSetting[] {
  const controls = new Controls(build);
  const differ = comparing(build);
  const words = partWords(build.parts);
  const called = (part: string) => `the ${words.get(part) ?? part}`;
  const main = controls.main?.name;
  const positions = mainPositions(controls).map(({ settings }) => settings);
  const inMain = (settings: Settings) =>
    main === undefined ? [] : [{ control: main, to: settings.switches[main] ?? 1 }];
  const each = positions.map((settings): PlannedSetting => {
    const why = main === undefined ? "everything at rest" : "what this position lets in, all knobs at 10";
    return { settings, moved: inMain(settings), why };
  });
  const whereActs = (control: string, to: number) => {
    const put = positions.map((settings) => ({ settings, moved: withControl(controls, settings, control, to) }));
    return put.find(({ settings, moved }) => differ(settings, moved));
  };
  const otherSwitches = controls.switches
    .filter(({ name }) => name !== main)
    .flatMap(({ name, part, onShaft, table }) =>
      table.positions.slice(1).flatMap((_, index): PlannedSetting[] => {
        const found = whereActs(name, index + 2);
        if (!found) return [];
        const moved = [...inMain(found.settings), { control: name, to: index + 2 }];
        return [{ settings: found.moved, moved, why: `what ${called(part)}${onShaft ? "'s switch" : ""} does` }];
      }),
    );
  const knobs = controls.pots.flatMap((name) =>
    [0, 5].flatMap((to): PlannedSetting[] => {
      const found = whereActs(name, to);
      if (!found) return [];
      const why = to === 0 ? `the end of ${called(name)}'s track` : `${called(name)}'s taper, and what hangs on it`;
      return [{ settings: found.moved, moved: [...inMain(found.settings), { control: name, to }], why }];
    }),
  );
  return [...each, ...otherSwitches, ...knobs].slice(0, MAX_TAKES);
}
