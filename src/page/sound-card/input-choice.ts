import { h } from "../dom/element.ts";
import { formChoice } from "../fields/form-fields.ts";

const USUAL_INPUT = { value: "", label: "the browser's usual one" };

/** Which input is recorded from. */
export function createInputChoice() {
  const field = formChoice("input", "Input", [USUAL_INPUT]);
  const inputs = field.element.querySelector("select")!;
  return {
    element: field.element,
    read: () => field.read(),
    /** Inputs have names only once one of them has been allowed. */
    async list(): Promise<void> {
      const devices = await navigator.mediaDevices.enumerateDevices();
      const named = devices.filter(({ kind: sort, label }) => sort === "audioinput" && label !== "");
      const chosen = inputs.value;
      inputs.replaceChildren(
        ...[USUAL_INPUT, ...named.map(({ deviceId, label }) => ({ value: deviceId, label }))].map(({ value, label }) =>
          h("option", { value, selected: value === chosen }, label),
        ),
      );
    },
  };
}
