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

/** Adds a part under a name of its own; it is wired in the list of wires. */
export function createAddPart(editor: Editor): HTMLElement {
  const id = freshId("add-part");
  const select = h(
    "select",
    { id },
    Object.entries(KIND_WORDS).map(([value, label]) => h("option", { value }, label)),
  );
  const add = () =>
    editor.edit((source) => ({
      ...source,
      parts: { ...source.parts, [freeName(source.parts, select.value)]: newPart(select.value) },
    }));
  return h(
    "div",
    { class: "row add-row" },
    h("div", { class: "field" }, h("label", { for: id }, "Another part"), select),
    h("button", { type: "button", onclick: add }, "Add it"),
  );
}
