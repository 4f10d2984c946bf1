import type { RawSettings } from "../../build-file/settings.ts";
import { type Difference, differencesOf } from "../builds/differences.ts";
import { stepsInWords } from "../builds/value-words.ts";
import type { AppState } from "../state/app-state.ts";
import { fitSettings } from "../state/fit-settings.ts";
import { partLabel, switchLabel } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";

/** One side of a blind test. */
export interface Candidate {
  readonly reading: Reading;
  readonly settings: RawSettings;
}

/** Every control by the name that the page gives it: "Lever 2, Tone 1 5, Tone 2 push-pull up". */
function settingsText({ reading, settings }: Candidate): string {
  const { build, controls } = reading;
  const { main } = controls;
  const switches = [...controls.switches].sort((a, b) => Number(b === main) - Number(a === main));
  const words = [
    ...switches.map((each) => `${switchLabel(build, each)} ${settings[each.name] ?? 1}`),
    ...controls.pots.map((name) => `${partLabel(build, name)} at ${settings[name] ?? 10}`),
  ];
  return words.join(", ") || "as built";
}

const MAX_NAMED = 3;

function valueWords(one: Candidate, other: Candidate, { where, inA }: Difference): string {
  const [part = "", ...fields] = where.split(" › ");
  const having = [one, other].find(({ reading }) => Object.hasOwn(reading.build.parts, part));
  const name = having ? partLabel(having.reading.build, part) : part;
  return `${[name, ...stepsInWords(fields)].join(" ")}: ${inA === "–" ? "none" : inA}`;
}

function wires(count: number): string {
  return `${count} wire${count === 1 ? "" : "s"}`;
}

/** What the first has that the second has not: "Volume resistance: 250k, 3 wires of its own". */
function ownParts(one: Candidate, other: Candidate): string {
  const differences = differencesOf(one.reading.source, other.reading.source);
  const values = differences.filter(({ isWire }) => !isWire);
  const ofWires = differences.filter(({ isWire }) => isWire);
  const own = ofWires.filter(({ inA }) => inA !== "–").length;
  const more = values.length > MAX_NAMED ? ` and ${values.length - MAX_NAMED} more differences` : "";
  const named = values.slice(0, MAX_NAMED).map((each) => valueWords(one, other, each));
  return [
    ...(named.length > 0 ? [named.join(", ") + more] : []),
    ...(own > 0 ? [`${wires(own)} of its own`] : []),
    ...(ofWires.length > own ? [`without ${wires(ofWires.length - own)} of the other's`] : []),
  ].join(", ");
}

/** What one side is: the guard, what it has that the other side has not, and how its controls stand. */
export function candidateText(candidate: Candidate, against: Candidate | undefined): string {
  const title = candidate.reading.source.title || "this guard";
  const own = against ? ownParts(candidate, against) : "";
  return `${title}${own && ` (${own})`}: ${settingsText(candidate)}`;
}

export function fromBench({ reading, settings }: AppState): Candidate | undefined {
  return reading ? { reading, settings } : undefined;
}

/** The other build where there is one; else the same guard with its tone turned down. */
export function usualSecond(state: AppState): Candidate | undefined {
  const { reading, other, settings } = state;
  if (other) return { reading: other, settings: fitSettings(other, settings) };
  return reading ? { reading, settings: fitSettings(reading, { ...settings, tone: 5 }) } : undefined;
}
