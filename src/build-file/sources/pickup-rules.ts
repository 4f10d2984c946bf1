import { rule, type SourceRule } from "./rule.ts";

/** Paths of a pickup's values are without its coil's name, and begin with its type or with what the type rests on as a whole. */
export const PICKUP_RULES: readonly SourceRule[] = [
  rule("pickups.stacked-single.coupling", "from memory", "stacked"),
  rule("pickups.stacked-single.output", "from memory", "stackedOutput"),
  rule("pickups.*.winding|magnet", "common practice", "turned"),
  rule("pickups.*.conductors|metal", "common practice", "make"),
  rule("pickups.*.usualPot", "common practice", "usualPot"),
  rule("pickups.*.aperture|coilSpacing", "from memory", "lengths"),
  rule("pickups.*.resistance", "common practice", "coilResistance"),
  rule("pickups.*.output", "common practice", "output"),
  rule("pickups.*.coupling", "measured", "coupling"),
  rule("pickups.typical-single.inductance", "published", "singleHenries"),
  rule("pickups.typical-humbucker.inductance", "published", "humbuckerHenries"),
  rule("pickups.within-ranges.inductance|capacitance|loss", "common practice", "withinRanges"),
  rule("pickups.within-ranges.loss.**", "common practice", "withinRanges"),
  rule("pickups.*.inductance|capacitance|loss", "measured", "coils"),
  rule("pickups.*.loss.**", "measured", "coils"),
];
