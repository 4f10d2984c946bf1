import { h } from "../dom/element.ts";
import { assembleField, type Commit, type Field } from "../fields/field.ts";

const HINT =
  "A pot turns through 300°; 15° at the bottom and 15 to 30° at the top do nothing. Where its data sheet says over how much it works, such as 225°, the flat ends become that much longer.";

interface Angles {
  readonly mechanical?: number;
  readonly electrical?: unknown;
}

/** A pot's effective electrical angle, as a data sheet has it; an empty field takes the usual flat ends again. */
export function angleField(name: string, commit: Commit): Field {
  const path = ["parts", name, "angles"];
  const input = h("input", { type: "text", inputmode: "decimal", autocomplete: "off", size: 7 });
  let known: Angles = {};
  input.addEventListener("change", () => {
    const text = input.value.trim();
    const number = Number(text);
    commit(path, text === "" ? undefined : { ...known, electrical: Number.isFinite(number) ? number : text });
  });
  return assembleField(
    { path, label: "Electrical angle by its data sheet, °", hint: HINT },
    {
      control: input,
      toControl: (value) => {
        known = (value ?? {}) as Angles;
        input.value = String(known.electrical ?? "");
      },
    },
  );
}
