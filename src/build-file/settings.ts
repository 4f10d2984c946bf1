import { type InputFault, refused } from "../errors.ts";
import { type SwitchControl, switchControls } from "./lugs.ts";
import { suggestion } from "./nearest.ts";
import { partsOfKind } from "./parts-of-kind.ts";
import type { Build } from "./schema.ts";

/** What a caller writes: a dial 0–10, a position from 1, or "down"/"centre"/"up". */
export type SettingValue = number | string;
export type RawSettings = Readonly<Record<string, SettingValue>>;

/** One state of every control: pots at 0–10 by part name, switches at 1…n by control name. */
export interface Settings {
  readonly dials: Readonly<Record<string, number>>;
  readonly switches: Readonly<Record<string, number>>;
}

export const DIAL_MAX = 10;
const SWITCH_WORDS: Readonly<Record<string, (positionCount: number) => number>> = {
  down: () => 1,
  centre: () => 2,
  up: (positionCount) => positionCount,
};

/** The controls of a build, in the build file's order. */
export class Controls {
  readonly pots: readonly string[];
  readonly switches: readonly SwitchControl[];
  /** The switch that sweeps vary first: the first lever, toggle or rotary, or the first switch of its own; none is possible. */
  readonly main: SwitchControl | undefined;
  readonly #roles: Readonly<Record<string, readonly string[]>>;

  constructor(build: Build) {
    const pots = partsOfKind(build, "pot");
    this.pots = pots.map(([name]) => name);
    this.switches = switchControls(build.parts);
    const standing = this.switches.filter((control) => !control.onShaft);
    this.main = standing.find((control) => control.table.positions.length > 2) ?? standing[0];
    const roles = Object.create(null) as Record<string, string[]>;
    for (const [name, pot] of pots) {
      if (!pot.role) continue;
      const members = roles[pot.role] ?? [];
      members.push(name);
      roles[pot.role] = members;
    }
    this.#roles = roles;
  }

  /** The pots or the switch that a key moves: a control's own name first, then a role. */
  resolve(key: string): { pots: readonly string[] } | { control: SwitchControl } | undefined {
    if (this.pots.includes(key)) return { pots: [key] };
    const control = this.switches.find((candidate) => candidate.name === key);
    if (control) return { control };
    const pots = this.#roles[key];
    return pots ? { pots } : undefined;
  }

  potsWithRole(role: string): readonly string[] {
    return this.#roles[role] ?? [];
  }

  get names(): string[] {
    const controls = [...this.pots, ...this.switches.map((control) => control.name)];
    return [...new Set([...controls, ...Object.keys(this.#roles)])];
  }

  /** Every dial at 10, every switch at position 1 (down). */
  get atRest(): Settings {
    return {
      dials: Object.fromEntries(this.pots.map((name) => [name, DIAL_MAX])),
      switches: Object.fromEntries(this.switches.map((control) => [control.name, 1])),
    };
  }
}

function dialOf(value: SettingValue): number {
  const dial = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  if (typeof dial !== "number" || !(dial >= 0 && dial <= DIAL_MAX))
    throw new RangeError(`"${value}" is no dial setting; expected a number from 0 to ${DIAL_MAX}`);
  return dial;
}

function positionOf(value: SettingValue, control: SwitchControl): number {
  const count = control.table.positions.length;
  const word =
    typeof value === "string" && Object.hasOwn(SWITCH_WORDS, value) ? SWITCH_WORDS[value]?.(count) : undefined;
  const position = word ?? Number(value);
  if (!Number.isInteger(position) || position < 1 || position > count || (value === "centre" && count !== 3)) {
    const words = count === 3 ? ' or "down", "centre", "up"' : count === 2 ? ' or "down", "up"' : "";
    throw new RangeError(`"${value}" is no position of ${control.name}; expected 1 to ${count}${words}`);
  }
  return position;
}

/** The settings after moving one control (or every pot of a role). @throws RangeError with a message for the field. */
export function withControl(controls: Controls, settings: Settings, key: string, value: SettingValue): Settings {
  const target = controls.resolve(key);
  if (!target)
    throw new RangeError(`there is no control or role "${key.slice(0, 60)}"${suggestion(key, controls.names)}`);
  if ("control" in target) {
    const position = positionOf(value, target.control);
    return { ...settings, switches: { ...settings.switches, [target.control.name]: position } };
  }
  const dial = dialOf(value);
  return { ...settings, dials: { ...settings.dials, ...Object.fromEntries(target.pots.map((pot) => [pot, dial])) } };
}

/** Does everything, and refuses what failed together. @throws PresolderError SETTINGS_INVALID naming each path at fault */
export function collect<T>(entries: Iterable<[path: string, act: () => T]>): T[] {
  const faults: InputFault[] = [];
  const results: T[] = [];
  for (const [path, act] of entries) {
    try {
      results.push(act());
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      faults.push({ path, message: error.message });
    }
  }
  if (faults.length > 0) throw refused("SETTINGS_INVALID", faults);
  return results;
}

/** Roles first, so that a control named on its own overrides its role whatever the order of keys. */
export function rolesFirst<T>(controls: Controls, entries: [string, T][]): [string, T][] {
  const isRole = (key: string) => !controls.pots.includes(key) && controls.potsWithRole(key).length > 0;
  return [...entries.filter(([key]) => isRole(key)), ...entries.filter(([key]) => !isRole(key))];
}

/**
 * One state of every control; those left out stand at 10, at position 1, and down.
 * @throws PresolderError SETTINGS_INVALID naming each control at fault.
 */
export function parseSettings(controls: Controls, raw: RawSettings = {}, path = "settings"): Settings {
  let settings = controls.atRest;
  collect(
    rolesFirst(controls, Object.entries(raw)).map(([key, value]) => [
      `${path}.${key}`,
      () => {
        settings = withControl(controls, settings, key, value);
      },
    ]),
  );
  return settings;
}

/** The same for settings of one build that turn every control alike. */
export function settingsKey({ switches, dials }: Settings): string {
  return JSON.stringify([switches, dials]);
}

/** What a position of a switch on a shaft is called. */
export function shaftWord({ table }: SwitchControl, position: number): "down" | "centre" | "up" {
  return position === 1 ? "down" : position === table.positions.length ? "up" : "centre";
}

/** A switch as it stands: "lever 2", "tone2.s up". */
export function stateWord(control: SwitchControl, position: number): string {
  return `${control.name} ${control.onShaft ? shaftWord(control, position) : position}`;
}

/** The settings as a caller would write them: every control by its own name. */
export function rawSettings(controls: Controls, settings: Settings): Record<string, SettingValue> {
  return Object.fromEntries([
    ...controls.switches.map((control): [string, SettingValue] => {
      const position = settings.switches[control.name] ?? 1;
      return [control.name, control.onShaft ? shaftWord(control, position) : position];
    }),
    ...controls.pots.map((name): [string, SettingValue] => [name, settings.dials[name] ?? DIAL_MAX]),
  ]);
}
