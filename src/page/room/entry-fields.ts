import { h } from "../dom/element.ts";
import { type FormField, formArea, formChoice, formText } from "../fields/form-fields.ts";
import type { Option } from "../fields/plain-fields.ts";

type Take = (text: string) => void;

const controlOf = ({ element }: FormField) =>
  element.querySelector<HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>("input, select, textarea")!;

/** Hands on what is typed, letter by letter: whoever takes it waits until things are quiet. */
function heard(field: FormField, value: string, take: Take): FormField {
  const control = controlOf(field);
  control.value = value;
  control.addEventListener("input", () => take(control.value));
  return field;
}

export interface TextSpec {
  readonly path: string;
  readonly label: string;
  readonly value: string;
  /** Shown while it is empty: how it is written, or what somebody remembers. */
  readonly placeholder?: string;
}

export const entryText = ({ path, label, value, placeholder = "" }: TextSpec, take: Take): FormField =>
  heard(formText(path, label, value, placeholder), value, take);

export const entryArea = ({ path, label, value, placeholder = "" }: TextSpec, take: Take): FormField =>
  heard(formArea(path, label, placeholder), value, take);

export const entryChoice = (spec: TextSpec, options: readonly Option[], take: Take): FormField =>
  heard(formChoice(spec.path, spec.label, options), spec.value, take);

/** Shows another text in a field without saying that somebody typed it. */
export function setEntry(field: FormField, text: string): void {
  controlOf(field).value = text;
}

export const fieldRow = (fields: readonly FormField[]): HTMLElement =>
  h(
    "div",
    { class: "field-row" },
    fields.map(({ element }) => element),
  );
