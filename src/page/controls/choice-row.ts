import { freshId, h } from "../dom/element.ts";

export interface ChoiceRow<Value> {
  readonly element: HTMLElement;
  show(value: Value): void;
  /** Greys out what makes no sense at present. */
  allow(isAllowed: (value: Value) => boolean): void;
}

interface Choice<Value> {
  readonly value: Value;
  readonly label: string;
  /** Said in full to a screen reader and on hovering. */
  readonly title?: string;
}

/** A few choices side by side, one of them chosen: radio buttons, so that arrow keys work as everywhere. */
export function createChoiceRow<Value extends string | number>(
  legend: string,
  choices: readonly Choice<Value>[],
  onChoose: (value: Value) => void,
): ChoiceRow<Value> {
  const name = freshId("choice");
  const inputs = choices.map(({ value, label, title }) => {
    const input = h("input", { type: "radio", name, value, onchange: () => onChoose(value) });
    return { value, input, element: h("label", { class: "choice", title }, input, h("span", {}, label)) };
  });
  const element = h(
    "fieldset",
    { class: "choices" },
    h("legend", {}, legend),
    h(
      "div",
      { class: "choice-list" },
      inputs.map((each) => each.element),
    ),
  );
  return {
    element,
    allow: (isAllowed) => {
      for (const each of inputs) each.input.disabled = !isAllowed(each.value);
    },
    show: (value) => {
      for (const each of inputs) each.input.checked = each.value === value;
    },
  };
}
