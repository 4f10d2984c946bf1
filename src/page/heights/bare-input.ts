import type { FormField } from "../fields/form-fields.ts";

/** The control of a text field, to be filled in by something else than a hand. */
export function bareInput(field: FormField): HTMLInputElement {
  return field.element.querySelector("input")!;
}
