import { freshId, h } from "../dom/element.ts";

export interface SelectField<Value extends string> {
  readonly element: HTMLElement;
  read(): Value;
}

/** One of several ways, the first unless another is chosen. */
export function selectField<Value extends string>(
  label: string,
  options: readonly (readonly [value: Value, text: string])[],
  changed: () => void,
): SelectField<Value> {
  const id = freshId("select");
  const select = h(
    "select",
    { id, onchange: changed },
    options.map(([value, text]) => h("option", { value }, text)),
  );
  return {
    element: h("div", { class: "field" }, h("label", { for: id }, label), select),
    read: () => select.value as Value,
  };
}
