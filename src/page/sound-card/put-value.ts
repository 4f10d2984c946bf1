import { written } from "../choice/put-values.ts";
import { freshId, h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { type Path, setAt } from "../state/paths.ts";

type Unit = "farads" | "ohms";

/** Where a part of each kind keeps what was measured on it. */
const KEYS: Readonly<Record<Unit, Readonly<Record<string, string>>>> = {
  farads: { cap: "capacitance" },
  ohms: { pot: "measured", resistor: "resistance" },
};

/** A choice of the parts that a value suits, and the button that gives it to one. @returns nothing where none suits */
export function createPutValue(store: AppStore, editor: Editor, value: number, unit: Unit): HTMLElement | undefined {
  const places = Object.entries(store.state.source?.parts ?? {}).flatMap(([name, part]): Path[] => {
    const key = KEYS[unit][String(part.kind)];
    return key === undefined ? [] : [["parts", name, key]];
  });
  if (places.length === 0) return undefined;
  const id = freshId("part");
  const select = h(
    "select",
    { id },
    places.map(([, name], index) => h("option", { value: index }, String(name))),
  );
  const put = () => {
    const path = places[Number(select.value)];
    if (path) void editor.edit((source) => setAt(source, path, written(value, unit)));
  };
  return h(
    "div",
    { class: "row add-row" },
    h("div", { class: "field" }, h("label", { for: id }, "Part"), select),
    h("button", { type: "button", onclick: put }, "Give it this value"),
  );
}
