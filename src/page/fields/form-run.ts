import { h, replaceContent } from "../dom/element.ts";
import { clearFormFaults, type FormField, showFormFaults } from "./form-fields.ts";

export interface FormRun {
  readonly button: HTMLButtonElement;
  readonly answer: HTMLElement;
}

/** What stands in the answer's place until it is there. */
interface Wait {
  readonly element: HTMLElement;
  /** Aborted once nobody waits any longer. */
  readonly stop: AbortSignal;
}

type Ask = (stop: AbortSignal) => Promise<HTMLElement | undefined>;

const shortWait = (): Wait => ({
  element: h("p", { class: "hint" }, "Working…"),
  stop: new AbortController().signal,
});

function longWait(): Wait {
  const controller = new AbortController();
  const since = new Date().toLocaleTimeString(undefined, { timeStyle: "medium" });
  const stop = h("button", { type: "button", onclick: () => controller.abort() }, "Stop");
  return {
    element: h("div", { class: "buttons" }, h("p", { class: "hint" }, `Working since ${since}.`), stop),
    stop: controller.signal,
  };
}

function createRun(label: string, fields: () => readonly FormField[], ask: Ask, wait: () => Wait): FormRun {
  const answer = h("div", { class: "stack", "aria-live": "polite" });
  const button = h("button", { type: "button", class: "primary" }, label);
  button.addEventListener("click", async () => {
    button.disabled = true;
    clearFormFaults(fields());
    const { element, stop } = wait();
    replaceContent(answer, element);
    try {
      replaceContent(answer, await ask(stop));
    } catch (error) {
      const rest = stop.aborted ? "" : showFormFaults(fields(), error);
      replaceContent(answer, rest && h("p", { class: "fault-text", role: "alert" }, rest));
    } finally {
      button.disabled = false;
    }
    if (!stop.aborted) return;
    replaceContent(answer, h("p", { class: "hint" }, "Stopped."));
    // It was on the button that is gone now.
    button.focus();
  });
  return { button, answer };
}

/** A button that asks the service and a place for its answer; a refusal goes beside the fields at fault. */
export function createFormRun(label: string, fields: () => readonly FormField[], ask: Ask): FormRun {
  return createRun(label, fields, ask, shortWait);
}

/** One for what may take a minute: it says since when it works, and can be stopped. @param ask gives up where its signal aborts */
export function createLongRun(label: string, ask: Ask): FormRun {
  return createRun(label, () => [], ask, longWait);
}
