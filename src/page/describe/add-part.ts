import { CATALOGUE } from "../../build-file/catalogue.ts";
import { freshId, h } from "../dom/element.ts";
import type { Editor } from "../state/editor.ts";
import type { PartSource } from "../state/reading.ts";
import { KIND_WORDS } from "./words.ts";

/** A new part of each kind, with the values most often met. */
function newPart(kind: string): PartSource {
  const [firstPickup] = CATALOGUE.pickups;
  switch (kind) {
    case "pickup":
      return { kind, type: firstPickup!.name, coils: firstPickup!.coils };
    case "pot":
      return { kind, resistance: "250k", taper: "audio" };
    case "switch":
      return { kind, type: "dpdt" };
    case "cap":
      return { kind, capacitance: "22n" };
    case "resistor":
      return { kind, resistance: "150k" };
    default:
      return { kind };
  }
}

function freeName(parts: Readonly<Record<string, unknown>>, kind: string): string {
  if (!(kind in parts)) return kind;
  for (let number = 2; ; number++) if (!(`${kind}${number}` in parts)) return `${kind}${number}`;
}

export interface AddPartWords {
  readonly label: string;
  readonly button: string;
}

/** How a new part comes into the build besides its values. */
export interface AddPartWays {
  readonly words: AddPartWords;
  /** Values of its own, such as its place. */
  readonly more: (kind: string) => Readonly<Record<string, unknown>>;
  readonly added: (name: string) => void;
}

const IN_THE_LIST: AddPartWays = {
  words: { label: "Another part", button: "Add it" },
  more: () => ({}),
  added: () => undefined,
};

/** Adds a part under a name of its own; it is wired in the list of wires or in the drawing. */
export function createAddPart(editor: Editor, { words, more, added }: AddPartWays = IN_THE_LIST): HTMLElement {
  const id = freshId("add-part");
  const select = h(
    "select",
    { id },
    Object.entries(KIND_WORDS).map(([value, label]) => h("option", { value }, label)),
  );
  const add = () => {
    let name = "";
    void editor.edit((source) => {
      name = freeName(source.parts, select.value);
      const part = { ...newPart(select.value), ...more(select.value) };
      return { ...source, parts: { ...source.parts, [name]: part } };
    });
    added(name);
  };
  return h(
    "div",
    { class: "row add-row" },
    h("div", { class: "field" }, h("label", { for: id }, words.label), select),
    h("button", { type: "button", onclick: add }, words.button),
  );
}
