import { h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { setAt } from "../state/paths.ts";

const PICOFARAD = 1e-12;
const METRES_DIGITS = 3;

/** A button that gives the guard's cable the capacitance a metre that a lead of its length has. @returns nothing without a cable */
export function createPutLead(store: AppStore, editor: Editor, farads: number): HTMLElement | undefined {
  const metres = store.state.reading?.build.cable?.length ?? 0;
  if (metres === 0) return undefined;
  const perMetre = `${Math.round(farads / metres / PICOFARAD)}p`;
  const put = () => void editor.edit((source) => setAt(source, ["cable", "capacitance"], perMetre));
  const called = `Give it to the guard's cable, as one of ${Number(metres.toPrecision(METRES_DIGITS))} m`;
  return h("div", { class: "row" }, h("button", { type: "button", onclick: put }, called));
}
