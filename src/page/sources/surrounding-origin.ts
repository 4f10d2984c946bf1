import { CATALOGUE } from "../../build-file/catalogue.ts";
import { showQuantity } from "../../build-file/show-quantity.ts";
import type { Dimension } from "../../build-file/units.ts";
import { DEFAULT_SCALE_METRES } from "../../lengths.ts";
import { kindOf } from "../describe/kind-choice.ts";
import { CABLE_DIMENSIONS, CABLES, LOAD_DIMENSIONS, LOADS } from "../describe/surrounding-kinds.ts";
import { readQuantity } from "../fields/read-quantity.ts";
import { getAt } from "../state/paths.ts";
import type { BuildSource } from "../state/reading.ts";
import type { Origin } from "./origin.ts";

/** What is taken where no load is said. */
const USUAL_OHMS = 1e6;

function ofKind(list: "loads" | "cables", name: string, key: string, dimension: Dimension, value: unknown): Origin {
  return { of: `${list}.${name}.${key}`, shown: showQuantity(readQuantity(dimension, value)!, dimension) };
}

function loadOrigin(load: unknown, key: string, value: unknown): Origin | undefined {
  const name = kindOf(LOADS, LOAD_DIMENSIONS, load);
  const isUsual = key === "resistance" && [undefined, USUAL_OHMS].includes(readQuantity("resistance", value));
  if (name === "") return isUsual ? { of: "defaults.load.resistance", shown: "1 MΩ" } : undefined;
  const { use } = CATALOGUE.loads.find((each) => each.name === name)!;
  if (key === "kind") return { of: `loads.${name}`, shown: `what is said of ${use}` };
  const dimension = LOAD_DIMENSIONS[key];
  return dimension && value !== undefined ? ofKind("loads", name, key, dimension, value) : undefined;
}

/** Where a value of the cable, the input or the scale stands in the catalogue. */
export function surroundingOrigin(source: BuildSource, path: readonly string[]): Origin | undefined {
  const [root, key] = path as [string, string];
  const value = getAt(source, path);
  if (root === "load") return loadOrigin(source.load, key, value);
  if (root === "cable" && key === "capacitance") {
    const name = kindOf(CABLES, CABLE_DIMENSIONS, source.cable);
    return name === "" ? undefined : ofKind("cables", name, key, "capacitancePerLength", value);
  }
  const isScale = root === "strings" && key === "scale";
  if (!isScale || (value !== undefined && readQuantity("length", value) !== DEFAULT_SCALE_METRES)) return undefined;
  return { of: "defaults.scale", shown: showQuantity(DEFAULT_SCALE_METRES, "length") };
}
