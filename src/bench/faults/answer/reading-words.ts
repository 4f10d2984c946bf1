import { type Controls, DIAL_MAX, stateWord } from "../../../build-file/settings.ts";
import type { ReadingPlan } from "../../meter/reading-plan.ts";
import type { Observation } from "../likelihood/observation.ts";

export function ohmsText({ ohms, above, below }: Pick<Observation, "ohms" | "above" | "below">): string {
  if (below !== undefined) return `under ${short(below)}`;
  if (above !== undefined) return `above ${short(above)}`;
  return ohms === Number.POSITIVE_INFINITY ? "open" : short(ohms);
}

/** "5.86 kΩ". */
function short(ohms: number): string {
  const [value, unit] = ohms >= 1e6 ? [ohms / 1e6, "MΩ"] : ohms >= 1e3 ? [ohms / 1e3, "kΩ"] : [ohms, "Ω"];
  return `${Number(value.toPrecision(3))} ${unit}`;
}

/** Where a reading was taken and how the controls stood, for one that the person gave no name. */
export function readingName(
  { between, sweep, settings: { switches, dials } }: ReadingPlan,
  controls: Controls,
): string {
  const isJack = between.every((lug) => /\.(tip|sleeve)$/.test(lug));
  const where = isJack ? "the jack" : between.join(" to ");
  const states = controls.switches.map((control) => stateWord(control, switches[control.name] ?? 1));
  const turned = Object.entries(dials).flatMap(([name, dial]) => (dial === DIAL_MAX ? [] : [`${name} ${dial}`]));
  return [where, ...states, ...turned, ...(sweep === undefined ? [] : [`highest as ${sweep} is swept`])].join(", ");
}
