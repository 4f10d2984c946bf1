import { COVERED_HUMBUCKER, METAL_TYPES } from "../../build-file/catalogue/shieldings.ts";

/** The metals that a coil may be given by name. */
export const METALS = [
  ...METAL_TYPES,
  { name: "covered-humbucker", title: "humbucker and a cover of low loss", shielding: COVERED_HUMBUCKER },
];

/** The metal whose law a coil has been given. */
export function metalOf(shielding: unknown) {
  const written = JSON.stringify(shielding);
  return METALS.find((each) => JSON.stringify(each.shielding) === written);
}
