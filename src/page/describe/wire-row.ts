import { freshId, h } from "../dom/element.ts";
import type { WireSource } from "../state/reading.ts";
import { LUG_LIST_ID } from "./lug-names.ts";
import { wireEnds, wireHow } from "./wire-ends.ts";
import { HOW_OPTIONS } from "./words.ts";

export interface WireRow {
  readonly element: HTMLElement;
  /** @param inWords what a lug is called */
  show(wire: WireSource, inWords: (lug: string) => string): void;
  showFaults(from: string | undefined, to: string | undefined): void;
}

interface WireActions {
  readonly change: (key: "from" | "to" | "how", value: string) => void;
  readonly remove: () => void;
}

export function lugInput(label: string): HTMLInputElement {
  return h("input", { type: "text", list: LUG_LIST_ID, autocomplete: "off", spellcheck: "false", "aria-label": label });
}

export function faultText(input: HTMLInputElement): {
  element: HTMLElement;
  show: (message: string | undefined) => void;
} {
  const element = h("p", { class: "fault-text", id: freshId("wire-fault"), hidden: true });
  return {
    element,
    show: (message) => {
      element.textContent = message ?? "";
      element.hidden = message === undefined;
      input.toggleAttribute("aria-invalid", false);
      if (message === undefined) input.removeAttribute("aria-describedby");
      else {
        input.setAttribute("aria-invalid", "true");
        input.setAttribute("aria-describedby", element.id);
      }
    },
  };
}

/** One wire: from, to, what it is, and a way to take it out. */
export function createWireRow(index: number, actions: WireActions): WireRow {
  const number = index + 1;
  const ends = (["from", "to"] as const).map((key) => {
    const input = lugInput(`Wire ${number}, ${key}`);
    input.dataset.path = `wires.${index}.${key}`;
    input.addEventListener("change", () => actions.change(key, input.value));
    return {
      input,
      whole: h("span", { class: "lug-whole" }),
      code: h("small", { class: "lug-code" }),
      fault: faultText(input),
    };
  });
  const [from, to] = ends as [(typeof ends)[number], (typeof ends)[number]];
  const how = h(
    "select",
    { "aria-label": `Wire ${number}, what it is`, onchange: () => actions.change("how", how.value) },
    HOW_OPTIONS.map(({ value, label }) => h("option", { value }, label)),
  );
  const remove = h(
    "button",
    { type: "button", class: "quiet", "aria-label": `Take out wire ${number}`, onclick: actions.remove },
    "Take out",
  );
  return {
    element: h(
      "li",
      { class: "wire-row" },
      h("span", { class: "wire-number" }, number),
      h("div", { class: "wire-end wire-from" }, from.input, from.whole, " ", from.code, from.fault.element),
      h("span", { class: "wire-line", "aria-hidden": "true" }, "—"),
      h("div", { class: "wire-end wire-to" }, to.input, to.whole, " ", to.code, to.fault.element),
      how,
      remove,
    ),
    show: (wire, inWords) => {
      for (const [index, lug] of wireEnds(wire).entries()) {
        const { input, whole, code } = ends[index]!;
        input.value = inWords(lug);
        whole.textContent = input.value;
        code.textContent = input.value === lug ? "" : lug;
      }
      how.value = wireHow(wire);
    },
    showFaults: (fromFault, toFault) => {
      from.fault.show(fromFault);
      to.fault.show(toFault);
    },
  };
}
