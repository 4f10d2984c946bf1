import type { PlanAnswer } from "../../contract/examine/examine-answer.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { SoundFields } from "../sound-card/sound-fields.ts";
import type { RigFields } from "./rig-fields.ts";

/** Common practice, no source. */
const BEFORE_RECORDING = [
  "Clip it together as in the picture, with short leads. Nothing else is plugged into the jack.",
  "Begin with the output low. On the first take the loudest pass should peak between −12 and −3 dB on the input before the resistor; then touch no gain any more.",
  "Let nobody touch the strings or the metal while it records.",
];

/** The service says where others get the signal; here it stands beside. */
const isAddress = (text: string) => text.includes("/api/sweep.wav");

const listOf = (tag: "ol" | "ul", items: readonly (string | HTMLElement)[]) =>
  h(
    tag,
    {},
    items.map((item) => (typeof item === "string" ? h("li", {}, item) : item)),
  );

function signalItem(sound: SoundFields): HTMLElement {
  const save = sound.createSave("Download it");
  return h(
    "li",
    {},
    "the measuring signal: the page plays it by itself as it records, and you can have it alone",
    h("div", { class: "row" }, sound.player.button, save.button),
    sound.player.told,
    save.answer,
  );
}

/** How the rig hangs together and what it needs: a fold that closes on a phone once recording has begun. */
export function createJackSetup(rig: RigFields, sound: SoundFields) {
  const signal = signalItem(sound);
  const needs = h("div", {});
  const element = h(
    "details",
    { class: "step", open: true },
    h("summary", {}, "1. Set it up"),
    h(
      "div",
      { class: "stack" },
      rig.picture,
      h("h4", {}, "What you need"),
      needs,
      h("h4", {}, "Before the first take"),
      listOf("ol", BEFORE_RECORDING),
      h("h4", {}, "What is known"),
      h(
        "div",
        { class: "field-row" },
        rig.fields.map(({ element }) => element),
      ),
    ),
  );
  const show = ({ needs: texts }: PlanAnswer) =>
    replaceContent(needs, listOf("ul", [...texts.filter((text) => !isAddress(text)), signal]));
  return { element, show };
}
