import { h } from "../dom/element.ts";

/** Common practice, no source. */
const CAUTIONS = [
  "Listen at low volume, and turn the amplifier down before the guitar is plugged in or out. Never open an amplifier.",
  "Measure a gap with a rule or the shank of a drill between the outer string's underside and the pole, the string pressed at the last fret.",
  "Hold the spring side: press the pickup down lightly as a screw is let out, so that it follows, and never let a screw out so far that it falls from its thread.",
  "Slacken the strings if a screw is hard to reach: a string under tension can put out an eye. Cover the finish under the screwdriver.",
  "A magnet snatches a screwdriver: lay tape or a card over the coil.",
  "Which way is down is common practice: turn an eighth, look, and turn back if it went the other way.",
  "Record with the same cable, volume and tone at 10, and one recording level for all positions and heights.",
];

export function createHeightsCautions(): HTMLElement {
  return h(
    "details",
    { class: "caution", open: true },
    h("summary", {}, h("b", {}, "Before you turn a screw")),
    h(
      "ul",
      {},
      CAUTIONS.map((text) => h("li", {}, text)),
    ),
  );
}
