import { type Controls, rawSettings, type Settings, type SettingValue } from "../../../build-file/settings.ts";

const ROLES = ["tone", "volume"];

/** "tone 5", "volume 1 at 5": a number after a numbered name would read as part of it. */
export function dialAt(name: string, value: SettingValue): string {
  return /\d$/.test(name) ? `${name} at ${value}` : `${name} ${value}`;
}

/** "position 1 (bridge), tone 10, volume 10": one setting, its controls by the names that a person has for them. */
export function settingWords(
  controls: Controls,
  settings: Settings,
  words: ReadonlyMap<string, string>,
  sounding: string,
): string {
  const { main } = controls;
  const raw = rawSettings(controls, settings);
  const atRest = rawSettings(controls, controls.atRest);
  const dials = ROLES.flatMap((role) => {
    const pots = controls.potsWithRole(role);
    if (pots.length > 0 && pots.every((pot) => raw[pot] === raw[pots[0]!])) return [dialAt(role, raw[pots[0]!]!)];
    return pots.map((pot) => dialAt(words.get(pot) ?? pot, raw[pot]!));
  });
  const told = new Set([main?.name, ...ROLES.flatMap((role) => controls.potsWithRole(role))]);
  const others = Object.entries(raw)
    .filter(([name, value]) => !told.has(name) && value !== atRest[name])
    .map(([name, value]) => dialAt(words.get(name.replace(/\.s$/, "")) ?? name, value));
  const position = main && `position ${raw[main.name]}${sounding === "" ? "" : ` (${sounding})`}`;
  return [...(position ? [position] : []), ...dials, ...others].join(", ") || "as built";
}
