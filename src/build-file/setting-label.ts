import { type Controls, rawSettings, type Settings } from "./settings.ts";

/** What a curve or a preview is known by, for people and for tables. */
export interface SettingSummary {
  /** "position 2, tone 7, volume 10". */
  readonly label: string;
  /** Of the main switch; null where a build has none. */
  readonly position: number | null;
  /** The dial all tone pots share; null where they differ or there is none. */
  readonly tone: number | null;
  readonly volume: number | null;
}

function sharedDial(controls: Controls, settings: Settings, role: string): number | null {
  const dials = controls.potsWithRole(role).map((pot) => settings.dials[pot] ?? 10);
  return dials.length > 0 && dials.every((dial) => dial === dials[0]) ? dials[0]! : null;
}

type Called = (name: string) => string;

function roleWords(controls: Controls, settings: Settings, role: string, called: Called): string[] {
  const shared = sharedDial(controls, settings, role);
  if (shared !== null) return [`${role} ${shared}`];
  return controls.potsWithRole(role).map((pot) => `${called(pot)} ${settings.dials[pot] ?? 10}`);
}

/**
 * The settings in words: the main switch, the tones, the volumes, then whatever else is not at rest.
 * @param called what a person calls a control; left out, its name in the build file
 */
export function summarize(controls: Controls, settings: Settings, called: Called = (name) => name): SettingSummary {
  const { main } = controls;
  const position = main ? (settings.switches[main.name] ?? 1) : null;
  const named = new Set([...controls.potsWithRole("tone"), ...controls.potsWithRole("volume"), main?.name]);
  const atRest = rawSettings(controls, controls.atRest);
  const others = Object.entries(rawSettings(controls, settings)).filter(
    ([name, value]) => !named.has(name) && value !== atRest[name],
  );
  const words = [
    ...(position === null ? [] : [`position ${position}`]),
    ...roleWords(controls, settings, "tone", called),
    ...roleWords(controls, settings, "volume", called),
    ...others.map(([name, value]) => `${called(name)} ${value}`),
  ];
  return {
    label: words.join(", ") || "as built",
    position,
    tone: sharedDial(controls, settings, "tone"),
    volume: sharedDial(controls, settings, "volume"),
  };
}
