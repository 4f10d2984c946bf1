import { CAUTIONS } from "../../bench/sheet/cautions.ts";
import type { Build } from "../../build-file/schema.ts";
import type { SettingValue } from "../../build-file/settings.ts";
import { Controls, rawSettings, shaftWord } from "../../build-file/settings.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { listed } from "../../english.ts";
import type { Placement } from "../takes/take.ts";
import type { PlannedSetting } from "./plan.ts";

/** A take to make, in words. */
export interface PlannedTake {
  readonly settings: Readonly<Record<string, SettingValue>>;
  readonly through: "jack" | Placement;
  readonly title: string;
  readonly instruction: string;
  readonly why: string;
}

function wordsFor(build: Build): (control: string, to: number) => string {
  const controls = new Controls(build);
  const words = partWords(build.parts);
  return (control, to) => {
    const found = controls.switches.find(({ name }) => name === control);
    if (!found) return `${words.get(control) ?? control} at ${to}`;
    const who = words.get(found.part) ?? found.part;
    return found.onShaft ? `${who} pulled ${shaftWord(found, to)}` : `${who} in position ${to}`;
  };
}

/** How a take through the resistor, or of an exciter over a coil, is told to whoever makes it. */
export function plannedTake(
  build: Build,
  { settings, moved, why }: PlannedSetting,
  through: "jack" | Placement = "jack",
): PlannedTake {
  const controls = new Controls(build);
  const word = wordsFor(build);
  const states = moved.map(({ control, to }) => word(control, to));
  const isAtTen = moved.every(({ control }) => !controls.pots.includes(control));
  const rest = isAtTen ? "all knobs at 10" : "all other knobs at 10";
  const title = states.length === 0 ? rest : states.join(", ");
  const how =
    through === "jack"
      ? "Play the sweep through the resistor into the jack and record both of its sides"
      : `Lay the small coil over the ${through.coil} coil of ${partWords(build.parts).get(through.pickup) ?? through.pickup}, the same side up as before, play the sweep through it and record the jack`;
  return {
    settings: rawSettings(controls, settings),
    through,
    title: through === "jack" ? title : `small coil over ${through.pickup}, ${title}`,
    instruction: `${how}, with ${listed([...states, rest])}.`,
    why,
  };
}

export const NEEDS: readonly string[] = [
  "an audio interface with two line or instrument inputs and a line output, set to the signal's sample rate, with no effect on",
  "a resistor of about 47 kΩ, measured with a meter",
  "two leads: from the output through the resistor to the jack's tip, and from each side of the resistor to an input; all grounds to the sleeve",
  "the measuring signal, /api/sweep.wav",
];

/** Common practice, no source: what recording asks for, and then what mending what it finds does. */
export const EXAMINE_CAUTIONS: readonly string[] = [
  "Switch the interface's phantom power off before anything is plugged in.",
  "Turn loudspeakers and headphones down before you play the signal: it is loud and shrill.",
  "Let nobody touch the strings or the metal while it records.",
  ...CAUTIONS,
];
