import { createCautions } from "../bench/cautions.ts";
import { h } from "../dom/element.ts";

/** Common practice, no source. */
const CAUTIONS = [
  "Unplug the guitar from the amplifier. Neither guitar nor interface is connected to an amplifier while you measure.",
  "The signal is loud and shrill: take headphones off and mute loudspeakers before it plays, and begin with the output low.",
  "Switch the interface's phantom power off before anything is plugged in.",
  "Nothing here needs the mains: open neither interface nor amplifier.",
];

/** Before anything is plugged in; and the usual ones, since a lead may have to be unsoldered. */
export function createSoundCardCautions(): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    h(
      "div",
      { class: "caution" },
      h("b", {}, "Before you plug anything in"),
      h(
        "ul",
        {},
        CAUTIONS.map((text) => h("li", {}, text)),
      ),
    ),
    createCautions(false),
  );
}
