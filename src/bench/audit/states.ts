import { type Controls, rawSettings, type Settings, type SettingValue } from "../../build-file/settings.ts";
import { listed } from "../../english.ts";

const WORKING_DIAL = 10;

type Switches = Readonly<Record<string, number>>;

function everyCombination(controls: Controls): Switches[] {
  return controls.switches.reduce<Switches[]>(
    (states, { name, table }) =>
      states.flatMap((state) => table.positions.map((_, index) => ({ ...state, [name]: index + 1 }))),
    [{}],
  );
}

/** The main switch's positions with all else at rest, then every other switch moved on its own in each of them. */
function oneAtATime(controls: Controls): Switches[] {
  const rest = controls.atRest.switches;
  const { main } = controls;
  const mains = main ? main.table.positions.map((_, index) => ({ ...rest, [main.name]: index + 1 })) : [rest];
  const others = controls.switches.filter((control) => control !== main);
  const moves = others.flatMap(({ name, table }) => table.positions.slice(1).map((_, i) => ({ [name]: i + 2 })));
  return [...mains, ...moves.flatMap((move) => mains.map((state) => ({ ...state, ...move })))];
}

/** How many states all combinations of the switches make. */
export function countStates(controls: Controls): number {
  return controls.switches.reduce((product, { table }) => product * table.positions.length, 1);
}

/** Every state of the switches, dials at 10; where they are more than `limit`, each switch moved on its own, up to the limit. */
export function switchStates(controls: Controls, limit: number): Settings[] {
  const states =
    countStates(controls) <= limit ? everyCombination(controls) : oneAtATime(controls).slice(0, Math.max(1, limit));
  const dials = Object.fromEntries(controls.pots.map((pot) => [pot, WORKING_DIAL]));
  return states.map((switches) => ({ switches, dials }));
}

export type SwitchSettings = Readonly<Record<string, SettingValue>>;

/** Beyond so many switches that decide, none is left aside: their subsets are too many to try. */
const MAX_DECIDING = 8;

/** Subsets of some names, the smallest first, each in the order of the names. */
function subsetsOf(names: readonly string[]): string[][] {
  const masks = Array.from({ length: 2 ** names.length - 1 }, (_, index) => index + 1);
  return masks.map((mask) => names.filter((_, bit) => (mask >> bit) & 1)).sort((a, b) => a.length - b.length);
}

/**
 * The states as settings of the fewest switches that tell them from the rest, each without those that make no difference to it; [] where
 * they are all there are.
 */
export function telling(controls: Controls, states: readonly Settings[], all: readonly Settings[]): SwitchSettings[] {
  if (states.length === all.length) return [];
  const inside = new Set(states);
  const names = controls.switches.map((control) => control.name);
  const key = (chosen: readonly string[], state: Settings) => chosen.map((name) => state.switches[name]).join();
  const decides = (chosen: readonly string[]) => {
    const keys = new Set(states.map((state) => key(chosen, state)));
    return all.every((state) => inside.has(state) === keys.has(key(chosen, state)));
  };
  const chosen = (names.length > MAX_DECIDING ? [] : subsetsOf(names)).find(decides) ?? names;
  const told: SwitchSettings[] = [];
  const open = new Set(states);
  for (const state of states) {
    if (!open.has(state)) continue;
    const alike = (kept: readonly string[]) => all.filter((other) => key(kept, other) === key(kept, state));
    const needed = chosen.reduce<readonly string[]>((kept, name) => {
      const fewer = kept.filter((each) => each !== name);
      return fewer.length > 0 && alike(fewer).every((other) => inside.has(other)) ? fewer : kept;
    }, chosen);
    for (const other of alike(needed)) open.delete(other);
    const raw = rawSettings(controls, state);
    told.push(Object.fromEntries(needed.map((name) => [name, raw[name]!])));
  }
  return told;
}

/** "in every position", "in positions 2 and 4", "with lever 2 and tone.s up". */
export function whereWords(controls: Controls, settings: readonly SwitchSettings[]): string {
  if (settings.length === 0) return "in every position";
  const main = controls.main?.name;
  if (main && settings.every((setting) => Object.keys(setting).join() === main)) {
    const positions = settings.map((setting) => String(setting[main]));
    return `in position${positions.length > 1 ? "s" : ""} ${listed(positions)}`;
  }
  const words = settings.slice(0, 6).map((setting) =>
    Object.entries(setting)
      .map(([name, value]) => `${name} ${value}`)
      .join(", "),
  );
  const more = settings.length > words.length ? "; and others" : "";
  return `with ${words.join("; or ")}${more}`;
}
