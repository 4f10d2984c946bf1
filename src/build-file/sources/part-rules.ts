import { rule, type SourceRule } from "./rule.ts";

const CERAMIC_2 = "ceramic-x7r|ceramic-z5u|ceramic-y5v";

const DIELECTRIC_RULES: readonly SourceRule[] = [
  rule("dielectrics.paper.**", "from memory", "paper"),
  rule("dielectrics.mica.**", "from memory", "mica"),
  rule("dielectrics.film-pet|film-pp.loss.*", "published", "filmTable"),
  rule("dielectrics.film-pet|film-pp.tolerance.*", "published", "filmTolerance"),
  rule("dielectrics.film-pet|film-pp.temperature.change.*", "published", "filmTable"),
  rule("dielectrics.film-pet|film-pp.temperature.from|to", "from memory", "filmRange"),
  rule("dielectrics.*.loss.1", "from memory", "flatLoss"),
  rule("dielectrics.ceramic-c0g|ceramic-x7r.loss.0", "published", "filmTable"),
  rule("dielectrics.ceramic-z5u|ceramic-y5v.loss.0", "from memory", "class2Loss"),
  rule("dielectrics.*.tolerance.*", "published", "ceramicLetters"),
  rule("dielectrics.*.temperature.**", "published", "ceramicCodes"),
  rule("dielectrics.ceramic-x7r.voltage", "published", "filmTable"),
  rule("dielectrics.ceramic-z5u|ceramic-y5v.voltage", "from memory", "class2Voltage"),
  rule(`dielectrics.${CERAMIC_2}.ageing`, "published", "ceramicAgeing"),
  rule("dielectrics.*.voltage|ageing", "from memory", "steady"),
];

/** Parts other than pickups, and what is taken of them where nothing is said. */
export const PART_RULES: readonly SourceRule[] = [
  ...DIELECTRIC_RULES,
  rule("pots.**", "common practice", "pots"),
  rule("toneCaps.**", "common practice", "toneCaps"),
  rule("trebleBleeds.**", "common practice", "trebleBleeds"),
  rule("metals|pickups.*.shielding.**", "measured", "shielding"),
  rule("defaults.tolerances.pot", "published", "potTolerance"),
  rule("defaults.tolerances.*", "common practice", "tolerances"),
  rule("defaults.track.endResistance", "measured", "endResistance"),
  rule("defaults.track.audioMidpoint", "common practice", "audioMidpoint"),
  rule("defaults.trackShapes.**", "published", "trackShapes"),
];
