import type { RawSettings } from "../../build-file/settings.ts";
import { differencesOf } from "../builds/differences.ts";
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

/** What the first has that the second has not: "Volume resistance 250k". */
function ownParts(one: Candidate, other: Candidate): string {
  const differences = differencesOf(one.reading.source, other.reading.source);
  const words = differences.map(({ where, inA }) => {
    const [part = "", ...rest] = where.split(" › ");
    const name = part in one.reading.build.parts ? partLabel(one.reading.build, part) : part;
    return `${[name, ...rest].join(" ")}: ${inA === "–" ? "none" : inA}`;
  });
  const more = words.length > MAX_NAMED ? ` and ${words.length - MAX_NAMED} more differences` : "";
  return words.slice(0, MAX_NAMED).join(", ") + more;
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
