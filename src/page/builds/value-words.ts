import { DIELECTRICS } from "../../build-file/catalogue/dielectrics.ts";
import { PICKUP_TYPES } from "../../build-file/catalogue/pickup-types.ts";
import { GOOD_COVER } from "../../build-file/catalogue/shieldings.ts";
import { parseQuantity } from "../../build-file/quantity.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import { SWITCH_WORDS } from "../../build-file/switch-words.ts";
import type { Dimension } from "../../build-file/units.ts";
import { readableName } from "../../build-file/words/part-words.ts";
import { metalOf } from "../describe/metal-of.ts";

const TITLES: Readonly<Record<string, string>> = {
  ...SWITCH_WORDS,
  ...Object.fromEntries([...PICKUP_TYPES, ...DIELECTRICS].map(({ name, title }) => [name, title])),
};

function shown(value: unknown, dimension: Dimension): string {
  return showQuantity(parseQuantity(value as number | string, dimension).value, dimension);
}

interface Metal {
  readonly pole?: unknown;
  readonly shelf?: unknown;
  readonly depth?: unknown;
}

function metalWords(metal: Metal): string {
  const known = metalOf(metal);
  if (known) return known.title;
  if (metal.pole !== undefined) return `3 dB less treble at ${shown(metal.pole, "frequency")}`;
  return `${metal.depth} dB less treble far above ${shown(metal.shelf, "frequency")}`;
}

interface Section {
  readonly resistance: unknown;
  readonly inductance?: unknown;
}

function lossWords({ resistance, inductance }: Section): string {
  const ohms = shown(resistance, "resistance");
  return inductance === undefined
    ? `${ohms} across the coil`
    : `${shown(inductance, "inductance")} more, bridged by ${ohms}`;
}

/** What is one value to a person, though the build file writes it in several, by its key. */
const WHOLE: Readonly<Record<string, (value: unknown) => string>> = {
  shielding: (value) => {
    const whole = metalOf(value);
    if (whole) return whole.title;
    const metals = [value].flat() as Metal[];
    return metals
      .map((metal) => (metal.pole === GOOD_COVER.pole ? "a cover of low loss" : metalWords(metal)))
      .join(" and ");
  },
  loss: (value) => (Array.isArray(value) ? value : [{ resistance: value }]).map(lossWords).join("; "),
  taper: (value) => (Array.isArray(value) ? `measured at ${value.length} turns` : String(value)),
  positions: () => "its own contacts",
  lugRows: () => "as they were found",
};

/** A value of the build file as a person reads it; undefined where it is told by what is within it. */
export function valueInWords(key: string, value: unknown): string | undefined {
  const whole = WHOLE[key];
  if (whole) return whole(value);
  if (typeof value === "object" && value !== null) return undefined;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return (key === "type" || key === "dielectric" ? TITLES[String(value)] : undefined) ?? String(value);
}

const STEPS: Readonly<Record<string, string>> = {
  shielding: "metal that dims it",
  loss: "its loss",
  drives: "switch on its shaft",
  lugRows: "its lugs",
  dielectric: "made of",
};

/** Steps of a path below a part, in a person's words: "slug coil", "metal that dims it". */
export function stepsInWords(steps: readonly string[]): string[] {
  return steps.flatMap((step, index) => {
    if (steps[index - 1] === "coils") return step === "coil" ? step : `${readableName(step)} coil`;
    return step === "coils" ? [] : (STEPS[step] ?? readableName(step));
  });
}
