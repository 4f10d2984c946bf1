import { changedWire, wireHow } from "../../describe/wire-ends.ts";
import { WIRE_KIND_CHOICES } from "../../describe/wire-kind-choices.ts";
import { HOW_OPTIONS } from "../../describe/words.ts";
import { freshId, h } from "../../dom/element.ts";
import type { WireSource } from "../../state/reading.ts";
import type { LugSpeech } from "../../words/lug-speech.ts";
import type { Hand } from "./hand.ts";
import { colouredWire, wireColour, wireDetail, wireKind, wireOfKind, wireWithDetail } from "./wire-edits.ts";

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

const KIND_OPTIONS = [["", "not said"], ...WIRE_KIND_CHOICES] as const;

function kindField(wire: WireSource, hand: Hand): HTMLElement {
  const id = freshId("wire-kind");
  const change = () => {
    const kind = select.value;
    const told = kind === "screened" ? "It is screened: its capacitance is in the curve now." : "Its kind is changed.";
    hand.changeWire(wire, wireOfKind(wire, kind), told);
  };
  const select = h(
    "select",
    { id, "data-key": "kind", onchange: change },
    KIND_OPTIONS.map(([value, label]) => h("option", { value }, label)),
  );
  select.value = wireKind(wire);
  return h("div", { class: "field" }, h("label", { for: id }, "Kind"), select);
}

/** What a screened wire's capacitance follows from. */
function screenFields(wire: WireSource, hand: Hand): HTMLElement[] {
  if (wireKind(wire) !== "screened") return [];
  const field = (key: "length" | "capacitance", label: string, usual: string) => {
    const id = freshId(`wire-${key}`);
    const input = h("input", {
      id,
      type: "text",
      class: "short",
      autocomplete: "off",
      value: wireDetail(wire, key) || usual,
      "data-key": key,
      onchange: () => hand.changeWire(wire, wireWithDetail(wire, key, input.value), `Its ${key} is ${input.value}.`),
    });
    return h("div", { class: "field" }, h("label", { for: id }, label), input);
  };
  return [field("length", "Length", "0.25m"), field("capacitance", "Capacitance a metre", "100pF")];
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
    h("div", { class: "field-row" }, howField(wire, hand), colourField(wire, hand), kindField(wire, hand)),
    h("div", { class: "field-row" }, screenFields(wire, hand)),
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
