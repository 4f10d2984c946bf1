import { rule, type SourceRule } from "./rule.ts";

/** Whole guards, and what is around them. */
export const SURROUNDING_RULES: readonly SourceRule[] = [
  rule("layouts.**", "common practice", "layouts"),
  rule("plans.**", "common practice", "plans"),
  rule("switches.**", "common practice", "switches"),
  rule("cables.ordinary.capacitance", "published", "cable"),
  rule("cables.*.capacitance", "from memory", "cableSpan"),
  rule("cables.*.resistance", "published", "conductor"),
  rule("loads.triode.resistance|stopper", "published", "valveInput"),
  rule("loads.pentode.resistance|stopper", "published", "valveInput"),
  rule("loads.pentode.capacitance", "published", "pentode"),
  rule("loads.triode|high-of-two.capacitance", "from memory", "triode"),
  rule("loads.low-of-two.capacitance", "from memory", "lowInput"),
  rule("loads.high-of-two|low-of-two.*", "common practice", "twoInputs"),
  rule("loads.interface.*", "published", "interface"),
  rule("loads.*.*", "common practice", "otherLoads"),
  rule("defaults.load.resistance", "published", "valveInput"),
  rule("defaults.screenedWire.capacitance", "published", "cable"),
  rule("defaults.scale", "common practice", "scale"),
  rule("defaults.places.**", "from memory", "places"),
  rule("strings.scaleMetres", "common practice", "scale"),
  rule("strings.strings.*.openFrequencyHz", "published", "pitches"),
  rule("strings.strings.*.gaugeMetres", "from memory", "gauges"),
  rule("strings.strings.*.coreMetres|wound", "common practice", "cores"),
];
