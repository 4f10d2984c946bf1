import { freshId, h } from "../dom/element.ts";

export interface Dial {
  readonly element: HTMLElement;
  show(value: number): void;
}

/** A knob from 0 to 10 as a slider: arrow keys move it, and its figure stands beside it. */
export function createDial(label: string, onTurn: (value: number) => void): Dial {
  const id = freshId("dial");
  const figure = h("output", { for: id, class: "dial-figure" });
  const slider = h("input", { id, type: "range", min: 0, max: 10, step: 0.5 });
  const show = (value: number) => {
    if (Number(slider.value) !== value) slider.value = String(value);
    figure.textContent = String(value);
  };
  slider.addEventListener("input", () => onTurn(Number(slider.value)));
  return { element: h("div", { class: "dial" }, h("label", { for: id }, label), slider, figure), show };
}
