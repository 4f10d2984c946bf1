import { faultLine, type InputFault } from "../../errors.ts";
import { freshId, h } from "../dom/element.ts";
import { unfold } from "../dom/folds.ts";
import { ServiceProblem } from "../server/client.ts";
import type { Option } from "./plain-fields.ts";

/** A field of a form that is sent to the service, told at fault by the path the service knows it under. */
export interface FormField<Value extends string = string> {
  readonly element: HTMLElement;
  readonly path: string;
  read(): Value;
  showFault(message: string | undefined): void;
}

type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

function withLabel(path: string, label: string, control: Control): FormField {
  const id = freshId("form");
  control.id = id;
  const fault = h("p", { class: "fault-text", id: `${id}-fault`, hidden: true });
  return {
    path,
    element: h("div", { class: "field" }, h("label", { for: id }, label), control, fault),
    read: () => control.value.trim(),
    showFault: (message) => {
      fault.textContent = message ?? "";
      fault.hidden = message === undefined;
      control.toggleAttribute("aria-describedby", false);
      if (message === undefined) control.removeAttribute("aria-invalid");
      else {
        control.setAttribute("aria-invalid", "true");
        control.setAttribute("aria-describedby", fault.id);
      }
    },
  };
}

export function formText(path: string, label: string, value = "", placeholder = ""): FormField {
  return withLabel(
    path,
    label,
    h("input", { type: "text", value, placeholder, autocomplete: "off", spellcheck: "false" }),
  );
}

export function formArea(path: string, label: string, placeholder: string): FormField {
  return withLabel(path, label, h("textarea", { rows: 6, placeholder, spellcheck: "false" }));
}

export function formChoice<Value extends string>(
  path: string,
  label: string,
  options: readonly Option<Value>[],
): FormField<Value> {
  const field = withLabel(
    path,
    label,
    h(
      "select",
      {},
      options.map(({ value, label: text }) => h("option", { value }, text)),
    ),
  );
  return { ...field, read: () => field.read() as Value };
}

/** Puts each fault beside its field, where it is seen. @returns what belongs to no field */
export function showFormFaults(fields: readonly FormField[], error: unknown): string {
  const faults: readonly InputFault[] = error instanceof ServiceProblem ? error.faults : [];
  const isAt = (field: FormField, fault: InputFault) =>
    fault.path === field.path || fault.path.startsWith(`${field.path}.`);
  for (const field of fields) {
    const message = faults.find((fault) => isAt(field, fault))?.message;
    field.showFault(message);
    if (message !== undefined) unfold(field.element);
  }
  const homeless = faults.filter((fault) => !fields.some((field) => isAt(field, fault)));
  if (faults.length === 0) return (error as Error).message;
  return faultLine(homeless);
}

export function clearFormFaults(fields: readonly FormField[]): void {
  for (const field of fields) field.showFault(undefined);
}
