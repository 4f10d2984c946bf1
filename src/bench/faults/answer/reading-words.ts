import { DIAL_MAX } from "../../../build-file/settings.ts";
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

/** What a person calls a reading: by its own label, or by where it was taken and how the controls stood. */
export function readingName({ label, between, sweep, settings: { switches, dials }, isNamed }: ReadingPlan): string {
  if (isNamed) return label;
  const isJack = between.every((lug) => /\.(tip|sleeve)$/.test(lug));
  const turned = Object.entries(dials).filter(([, dial]) => dial !== DIAL_MAX);
  const where = isJack ? "the jack" : between.join(" to ");
  const states = [...Object.entries(switches), ...turned].map(([name, value]) => `${name} ${value}`);
  return [where, ...states, ...(sweep === undefined ? [] : [`highest as ${sweep} is swept`])].join(", ");
}
