import { h } from "../dom/element.ts";
import { assembleField, type Commit, type Field, type Labelled } from "./field.ts";

/** A plain number; text that is none is handed on as it is, so that the fault is told beside the field. */
export function numberField(spec: Labelled, commit: Commit): Field {
  const input = h("input", { type: "text", inputmode: "decimal", autocomplete: "off", size: 7 });
  input.addEventListener("change", () => {
    const text = input.value.trim();
    const number = Number(text);
    commit(spec.path, text === "" ? undefined : Number.isFinite(number) ? number : text);
  });
  return assembleField(spec, {
    control: input,
    toControl: (value) => {
      input.value = value === undefined ? "" : String(value);
    },
  });
}

export function textField(spec: Labelled, commit: Commit): Field {
  const input = h("input", { type: "text", autocomplete: "off" });
  input.addEventListener("change", () => commit(spec.path, input.value.trim() || undefined));
  return assembleField(spec, {
    control: input,
    toControl: (value) => {
      input.value = String(value ?? "");
    },
  });
}

export interface Option<Value extends string = string> {
  readonly value: Value;
  readonly label: string;
}

interface ChoiceSpec extends Labelled {
  readonly options: readonly Option[];
  /** What an absent value is shown as. */
  readonly otherwise?: string;
  /** From the chosen text to what the build file holds. */
  readonly toSource?: (chosen: string) => unknown;
  /** From the build file to the text of an option; a value that no option has is listed as "own". */
  readonly fromSource?: (value: unknown) => string;
  readonly ownLabel?: string;
}

const OWN = "own";

export function choiceField(spec: ChoiceSpec, commit: Commit): Field {
  const { options, otherwise = "", toSource = (chosen) => chosen || undefined, fromSource } = spec;
  const select = h(
    "select",
    {},
    options.map(({ value, label }) => h("option", { value }, label)),
  );
  const own = h("option", { value: OWN, disabled: true }, spec.ownLabel ?? "its own table");
  select.addEventListener("change", () => commit(spec.path, toSource(select.value)));
  return assembleField(spec, {
    control: select,
    toControl: (value) => {
      const text = value === undefined ? otherwise : fromSource ? fromSource(value) : String(value);
      const known = options.some((option) => option.value === text);
      if (!known) select.append(own);
      else own.remove();
      select.value = known ? text : OWN;
    },
  });
}

export function flagField(spec: Labelled, commit: Commit): Field {
  const input = h("input", { type: "checkbox" });
  input.addEventListener("change", () => commit(spec.path, input.checked || undefined));
  return assembleField(spec, {
    control: input,
    toControl: (value) => {
      input.checked = value === true;
    },
  });
}
