import { h } from "../../dom/element.ts";
import { partLabel } from "../../state/names.ts";
import { speechOf } from "../../words/lug-speech.ts";
import type { GuardDrawing } from "../guard-drawing.ts";
import { lugText } from "../lug-text.ts";
import type { Hand } from "./hand.ts";
import type { LugFocus } from "./lug-keys.ts";

function wireButtons(name: string, { input }: GuardDrawing, hand: Hand): HTMLElement[] {
  return input.reading.source.wires
    .map((wire) => ({ wire, ends: hand.endsOf(wire) }))
    .filter(({ ends }) => ends.includes(name))
    .map(({ wire, ends }) =>
      h(
        "button",
        { type: "button", onclick: () => hand.choose({ kind: "wire", wire }) },
        `Wire to ${speechOf(input.reading).words.of(ends[0] === name ? ends[1] : ends[0])}`,
      ),
    );
}

/** What a lug is joined to, with ways on to its wires and its part. */
export function lugCard(name: string, drawing: GuardDrawing, hand: Hand, focus: LugFocus): HTMLElement[] {
  const { reading, path } = drawing.input;
  const { held } = hand.state.state;
  const part = name.split(".")[0]!;
  if (!drawing.lugs.has(name)) return [];
  const choosePart = () => {
    hand.choose({ kind: "part", name: part });
    focus.focus("part", part);
  };
  return [
    h("h3", {}, speechOf(reading).lug(name)),
    h("p", { class: "hint" }, speechOf(reading).say(lugText(reading, path, name))),
    h(
      "div",
      { class: "buttons" },
      held && h("button", { type: "button", onclick: () => hand.letGo() }, "Let go"),
      !held && h("button", { type: "button", onclick: () => hand.takeUp(name) }, "Take up a wire here"),
      wireButtons(name, drawing, hand),
      h("button", { type: "button", onclick: choosePart }, `Move or turn ${partLabel(reading.build, part)}`),
    ),
  ];
}
