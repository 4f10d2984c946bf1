import { h } from "../dom/element.ts";

export interface FaultLine {
  readonly element: HTMLElement;
  /** Says what is wrong with the field, also to a screen reader; nothing where it is right. */
  tell(message: string | undefined): void;
}

/** The line beneath a field that is there while something is wrong with it. @param id its own */
export function createFaultLine(input: HTMLElement, id: string): FaultLine {
  const element = h("p", { class: "fault-text", id, hidden: true });
  const tell = (message: string | undefined) => {
    element.textContent = message ?? "";
    element.hidden = message === undefined;
    if (message === undefined) {
      input.removeAttribute("aria-invalid");
      input.removeAttribute("aria-describedby");
    } else {
      input.setAttribute("aria-invalid", "true");
      input.setAttribute("aria-describedby", id);
    }
  };
  return { element, tell };
}
