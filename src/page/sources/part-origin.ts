import { DIELECTRICS } from "../../build-file/catalogue/dielectrics.ts";
import { CATALOGUE } from "../../build-file/catalogue.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import type { Dimension } from "../../build-file/units.ts";
import { readQuantity } from "../fields/read-quantity.ts";
import type { PartSource } from "../state/reading.ts";
import type { Origin } from "./origin.ts";

/** One of the catalogue's values of a sort, with its path. */
type Listed = readonly [of: string, value: string | undefined];

const POTS: readonly Listed[] = CATALOGUE.pots.map(({ value }) => [`pots.${value}.value`, value]);
const bleeds = (key: "capacitance" | "parallel" | "series"): Listed[] =>
  CATALOGUE.trebleBleeds.map((bleed, index) => [`trebleBleeds.${index}.${key}`, bleed[key]]);
const CAPS: readonly Listed[] = [
  ...CATALOGUE.toneCaps.map(({ value }): Listed => [`toneCaps.${value}.value`, value]),
  ...bleeds("capacitance"),
];
const RESISTORS: readonly Listed[] = [...bleeds("parallel"), ...bleeds("series")];

function listed(list: readonly Listed[], dimension: Dimension, written: unknown): Origin | undefined {
  const value = readQuantity(dimension, written);
  const found = list.find(([, each]) => value !== undefined && readQuantity(dimension, each) === value);
  return found && { of: found[0], shown: showQuantity(value!, dimension) };
}

/** A pot's value, or a resistor's or a cap's, as a plan says it. */
export function usualOrigin(sort: "pot" | "resistor" | "cap", written: unknown): Origin | undefined {
  if (sort === "cap") return listed(CAPS, "capacitance", written);
  return listed(sort === "pot" ? POTS : RESISTORS, "resistance", written);
}

export const AUDIO_ORIGIN: Origin = { of: "defaults.track.audioMidpoint", shown: "the audio taper" };

function toleranceOrigin(part: PartSource): Origin | undefined {
  const made = DIELECTRICS.find(({ name }) => name === part.dielectric);
  const shown = "the usual tolerance";
  return made ? { of: `dielectrics.${made.name}.tolerance`, shown } : { of: `defaults.tolerances.${part.kind}`, shown };
}

function dielectricOrigin(value: unknown): Origin | undefined {
  const made = DIELECTRICS.find(({ name }) => name === value);
  return made && { of: `dielectrics.${made.name}`, shown: `what is said of ${made.title}` };
}

/** Where a value of a pot, cap or resistor stands in the catalogue; an empty field has the usual one. */
export function partOrigin(part: PartSource, key: string, value: unknown): Origin | undefined {
  switch (key) {
    case "resistance":
      return listed(part.kind === "pot" ? POTS : RESISTORS, "resistance", value);
    case "capacitance":
      return listed(CAPS, "capacitance", value);
    case "dielectric":
      return dielectricOrigin(value);
    case "taper":
      return value === "audio" && part.midpoint === undefined ? AUDIO_ORIGIN : undefined;
    case "endResistance":
      return value === undefined ? { of: "defaults.track.endResistance", shown: "1 Ω at either end" } : undefined;
    case "tolerance":
      return value === undefined ? toleranceOrigin(part) : undefined;
    default:
      return undefined;
  }
}
