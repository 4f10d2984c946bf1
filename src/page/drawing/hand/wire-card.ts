import { changedWire, wireHow } from "../../describe/wire-ends.ts";
import { HOW_OPTIONS } from "../../describe/words.ts";
import { freshId, h } from "../../dom/element.ts";
import type { WireSource } from "../../state/reading.ts";
import type { LugSpeech } from "../../words/lug-speech.ts";
import type { Hand } from "./hand.ts";
import { colouredWire, wireColour } from "./wire-edits.ts";

/** Those that reels are sold in; any other word may be written. */
const COLOURS = ["black", "white", "red", "yellow", "green", "blue", "orange", "brown", "grey", "pink", "bare"];

function howField(wire: WireSource, hand: Hand): HTMLElement {
  const id = freshId("wire-how");
  const change = () =>
    hand.changeWire(wire, changedWire(wire, "how", select.value), `It is a ${select.value} from now on.`);
  const select = h(
    "select",
    { id, "data-key": "how", onchange: change },
    HOW_OPTIONS.map(({ value, label }) => h("option", { value }, label)),
  );
  select.value = wireHow(wire);
  return h("div", { class: "field" }, h("label", { for: id }, "Made of"), select);
}

function colourField(wire: WireSource, hand: Hand): HTMLElement {
  const [id, list] = [freshId("wire-colour"), freshId("wire-colours")];
  const change = () => {
    const colour = input.value.trim();
    hand.changeWire(
      wire,
      colouredWire(wire, colour),
      colour === "" ? "It has no colour of its own." : `It is ${colour}.`,
    );
  };
  const input = h("input", {
    id,
    list,
    type: "text",
    autocomplete: "off",
    maxlength: 30,
    value: wireColour(wire),
    "data-key": "colour",
    onchange: change,
  });
  const options = COLOURS.map((value) => h("option", { value }));
  return h("div", { class: "field" }, h("label", { for: id }, "Colour"), input, h("datalist", { id: list }, options));
}

/** What a wire joins, what it is, and what can be done with it. */
export function wireCard(wire: WireSource, hand: Hand, speech: LugSpeech): HTMLElement[] {
  const ends = hand.endsOf(wire);
  const moves = (["from", "to"] as const).map((end, index) =>
    h(
      "button",
      { type: "button", "data-key": `end-${end}`, onclick: () => hand.takeEnd(wire, end) },
      `Move the end at ${speech.words.of(ends[index]!)}`,
    ),
  );
  return [
    h("h3", {}, "Wire: ", speech.lug(ends[0]), " — ", speech.lug(ends[1])),
    h("div", { class: "field-row" }, howField(wire, hand), colourField(wire, hand)),
    h(
      "div",
      { class: "buttons" },
      moves,
      h("button", { type: "button", onclick: () => hand.takeOut(wire) }, "Take it out"),
      h("button", { type: "button", class: "quiet", onclick: () => hand.choose(undefined) }, "Done"),
    ),
    h("p", { class: "hint" }, "Its ends are ringed: drag one to another lug, or tap it and then the other lug."),
  ];
}
