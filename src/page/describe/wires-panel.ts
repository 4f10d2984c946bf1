import type { InputFault } from "../../errors.ts";
import { createCautions } from "../bench/cautions.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import type { BuildSource } from "../state/reading.ts";
import { lugInWords, namedLug, offerLugNames } from "./lug-names.ts";
import { changedWire } from "./wire-ends.ts";
import { createWireRow, faultText, lugInput, type WireRow } from "./wire-row.ts";

function rowsFor(store: AppStore, editor: Editor, count: number): WireRow[] {
  return Array.from({ length: count }, (_, index) =>
    createWireRow(index, {
      change: (key, value) =>
        editor.edit((source) => ({
          ...source,
          wires: source.wires.map((wire, at) =>
            at === index ? changedWire(wire, key, key === "how" ? value : namedLug(store, value)) : wire,
          ),
        })),
      remove: () => editor.edit((source) => ({ ...source, wires: source.wires.filter((_wire, at) => at !== index) })),
    }),
  );
}

function createNewWire(store: AppStore, editor: Editor): HTMLElement {
  const [from, to] = [lugInput("New wire, from"), lugInput("New wire, to")];
  const [fromFault, toFault] = [faultText(from), faultText(to)];
  const add = (event: Event) => {
    event.preventDefault();
    const ends = [
      { input: from, fault: fromFault, missing: "Say which lug the wire starts at, such as “volume, lug 2 (wiper)”." },
      { input: to, fault: toFault, missing: "Say which lug the wire goes to, such as “jack, tip”." },
    ];
    for (const { input, fault, missing } of ends) fault.show(input.value.trim() === "" ? missing : undefined);
    const empty = ends.find(({ input }) => input.value.trim() === "");
    if (empty) {
      empty.input.focus();
      return;
    }
    const lugs = [namedLug(store, from.value), namedLug(store, to.value)] as const;
    editor.edit((source: BuildSource) => ({ ...source, wires: [...source.wires, [lugs[0], lugs[1]]] }));
    from.value = "";
    to.value = "";
    from.focus();
  };
  return h(
    "form",
    { class: "wire-row new-wire", onsubmit: add },
    h("span", { class: "wire-number", "aria-hidden": "true" }, "+"),
    h("div", { class: "wire-end wire-from" }, from, fromFault.element),
    h("span", { class: "wire-line", "aria-hidden": "true" }, "—"),
    h("div", { class: "wire-end wire-to" }, to, toFault.element),
    h("button", { type: "submit" }, "Add wire"),
  );
}

function messageAt(faults: readonly InputFault[], path: string): string | undefined {
  return faults.find((fault) => fault.path === `build.${path}`)?.message;
}

/** The wiring, lug to lug, as a list. */
export function createWiresPanel(store: AppStore, editor: Editor): HTMLElement {
  offerLugNames(store);
  const list = h("ol", { class: "wire-list" });
  let rows: WireRow[] = [];
  store.watch(
    (state) => [state.source, state.faults, state.reading],
    (source, faults, _reading) => {
      if (!source) return;
      if (rows.length !== source.wires.length) {
        rows = rowsFor(store, editor, source.wires.length);
        replaceContent(
          list,
          rows.map((row) => row.element),
        );
      }
      for (const [index, row] of rows.entries()) {
        row.show(source.wires[index]!, (lug) => lugInWords(store, lug));
        row.showFaults(messageAt(faults, `wires.${index}.from`), messageAt(faults, `wires.${index}.to`));
      }
    },
  );
  return h(
    "div",
    { class: "stack" },
    h(
      "p",
      { class: "hint" },
      "Name a lug in words, as the list offers them, or by its code, as in volume.3 or lever.A0.",
    ),
    createCautions(false),
    list,
    createNewWire(store, editor),
  );
}
