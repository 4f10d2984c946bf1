import { CATALOGUE } from "../../build-file/catalogue.ts";
import type { Dimension } from "../../build-file/units.ts";
import type { Kind } from "./kind-choice.ts";

export const LOADS: readonly Kind[] = CATALOGUE.loads.map(({ name, use, ...values }) => ({ name, use, values }));
export const CABLES: readonly Kind[] = CATALOGUE.cables.map(({ name, use, capacitance }) => ({
  name,
  use,
  values: { capacitance },
}));

/** What tells one kind from another. */
export const LOAD_DIMENSIONS: Readonly<Record<string, Dimension>> = {
  resistance: "resistance",
  capacitance: "capacitance",
  stopper: "resistance",
};
export const CABLE_DIMENSIONS: Readonly<Record<string, Dimension>> = { capacitance: "capacitancePerLength" };
