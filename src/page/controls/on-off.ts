import { h } from "../dom/element.ts";

export interface OnOff {
  readonly element: HTMLElement;
  show(on: boolean): void;
}

export function createSwitch(label: string, onChange: (on: boolean) => void): OnOff {
  const input = h("input", { type: "checkbox", onchange: () => onChange(input.checked) });
  return {
    element: h("label", { class: "on-off" }, input, h("span", {}, label)),
    show: (on) => {
      input.checked = on;
    },
  };
}
