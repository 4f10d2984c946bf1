import { DEFAULTS } from "../../build-file/catalogue/defaults.ts";
import { DIELECTRICS } from "../../build-file/catalogue/dielectrics.ts";
import { CATALOGUE } from "../../build-file/catalogue.ts";
import { SWITCH_TYPES, switchTable } from "../../build-file/switch-types.ts";
import { usualStringSet } from "../../strings/string-set.ts";

const { pickups, ...rest } = CATALOGUE;

/** All values that the service takes of its own, wherever they live. */
export const WHOLE_CATALOGUE = {
  ...rest,
  pickups: pickups.map(({ basis: _basis, ...type }) => type),
  dielectrics: DIELECTRICS,
  switches: SWITCH_TYPES.map((type) => ({ type, ...switchTable({ type }) })),
  strings: usualStringSet(),
  defaults: DEFAULTS,
};
