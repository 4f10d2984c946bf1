import { h, replaceContent } from "../dom/element.ts";
import { clearFormFaults, type FormField, showFormFaults } from "./form-fields.ts";

export interface FormRun {
  readonly button: HTMLButtonElement;
  readonly answer: HTMLElement;
}

/** A button that asks the service and a place for its answer; a refusal goes beside the fields at fault. */
export function createFormRun(
  label: string,
  fields: () => readonly FormField[],
  ask: () => Promise<HTMLElement | undefined>,
): FormRun {
  const answer = h("div", { class: "stack", "aria-live": "polite" });
  const button = h("button", { type: "button", class: "primary" }, label);
  button.addEventListener("click", async () => {
    button.disabled = true;
    clearFormFaults(fields());
    replaceContent(answer, h("p", { class: "hint" }, "Working…"));
    try {
      replaceContent(answer, await ask());
    } catch (error) {
      const rest = showFormFaults(fields(), error);
      replaceContent(answer, rest && h("p", { class: "fault-text", role: "alert" }, rest));
    } finally {
      button.disabled = false;
    }
  });
  return { button, answer };
}
