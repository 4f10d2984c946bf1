import { DEFAULTS } from "../../build-file/catalogue/defaults.ts";
import { DIELECTRICS } from "../../build-file/catalogue/dielectrics.ts";
import { CATALOGUE } from "../../build-file/catalogue.ts";
import { SWITCH_TYPES, switchTable } from "../../build-file/switch-types.ts";
import { USUAL_STRINGS } from "../../render/usual-strings.ts";

const { pickups, ...rest } = CATALOGUE;

/** All values that the service takes of its own, wherever they live. */
export const WHOLE_CATALOGUE = {
  ...rest,
  pickups: pickups.map(({ basis: _basis, ...type }) => type),
  dielectrics: DIELECTRICS,
  switches: SWITCH_TYPES.map((type) => ({ type, ...switchTable({ type }) })),
  strings: USUAL_STRINGS,
  defaults: DEFAULTS,
};
