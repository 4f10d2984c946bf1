import { METAL_TYPES } from "../../build-file/catalogue/shieldings.ts";
import { CATALOGUE } from "../../build-file/catalogue.ts";
import { THREE_PICKUPS, TWO_PICKUPS } from "../../build-file/plans/places.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import type { Dimension } from "../../build-file/units.ts";
import { readQuantity } from "../fields/read-quantity.ts";
import type { PartSource } from "../state/reading.ts";
import type { Origin } from "./origin.ts";

const DIMENSIONS: Readonly<Record<string, Dimension>> = {
  resistance: "resistance",
  inductance: "inductance",
  capacitance: "capacitance",
  loss: "resistance",
};

const typeOf = (part: PartSource) => CATALOGUE.pickups.find(({ name }) => name === part.type);

/** The whole of a type's values. */
export function typeOrigin(name: unknown): Origin | undefined {
  const type = CATALOGUE.pickups.find((each) => each.name === name);
  return type && { of: `pickups.${type.name}`, shown: `what is said of ${type.title.toLowerCase()}` };
}

/** Where a value of a pickup as a whole stands in the catalogue. */
export function pickupOrigin(part: PartSource, key: string, value: unknown): Origin | undefined {
  const type = typeOf(part);
  if (key === "type") return typeOrigin(value);
  if (key === "tolerance" && value === undefined)
    return { of: "defaults.tolerances.coil", shown: "the usual tolerance" };
  if (key === "coupling" && type?.coupling !== undefined && value === type.coupling)
    return { of: `pickups.${type.name}.coupling`, shown: `a coupling of ${value}` };
  return undefined;
}

function metalOrigin(value: unknown): Origin | undefined {
  const metal = METAL_TYPES.find(({ shielding }) => JSON.stringify(shielding) === JSON.stringify(value));
  return metal && { of: `metals.${metal.name}`, shown: `what is said of ${metal.title}` };
}

/** Half of the spacings that coils of one pickup are laid apart, to either side. */
const OFFSETS = [0, 0.0045, 0.006, 0.009].flatMap((offset) => [offset, -offset]);
const WRITTEN_TO = 0.00006;

function distanceOrigin(place: string, value: unknown): Origin | undefined {
  const metres = readQuantity("length", value);
  if (metres === undefined) return undefined;
  for (const [list, places] of [
    ["three", THREE_PICKUPS],
    ["two", TWO_PICKUPS],
  ] as const) {
    const usual = (places as Readonly<Record<string, number>>)[place];
    if (usual !== undefined && OFFSETS.some((offset) => Math.abs(metres - usual - offset) < WRITTEN_TO))
      return { of: `defaults.places.${list}.${place}`, shown: showQuantity(metres, "length") };
  }
  return undefined;
}

/** Where a value of a pickup's coil stands in the catalogue. */
export function coilOrigin(
  place: string,
  part: PartSource,
  keys: readonly string[],
  value: unknown,
): Origin | undefined {
  const [coil, key] = keys as [string, string];
  if (key === "distance") return distanceOrigin(place, value);
  if (key === "shielding") return metalOrigin(value);
  const type = typeOf(part);
  const usual = (type?.coils[coil] as Readonly<Record<string, unknown>> | undefined)?.[key];
  if (!type || usual === undefined || value === undefined) return undefined;
  const of = `pickups.${type.name}.coils.${coil}.${key}`;
  const dimension = DIMENSIONS[key];
  if (dimension === undefined) return usual === value ? { of, shown: `${key} ${value}` } : undefined;
  const si = readQuantity(dimension, value);
  const isUsual = si !== undefined && si === readQuantity(dimension, usual);
  return isUsual ? { of, shown: showQuantity(si, dimension) } : undefined;
}
