import { freshId, h } from "../dom/element.ts";

const LEAST_TRIALS = 10;
const USUAL_TRIALS = 12;
const MOST_TRIALS = 50;

/** How many trials a text asks for, or why it cannot be so. */
export function readTrials(text: string): number | string {
  const count = Number(text);
  if (text.trim() !== "" && Number.isInteger(count) && count >= LEAST_TRIALS && count <= MOST_TRIALS) return count;
  const written = text.trim() === "" ? "Empty" : `"${text.trim()}"`;
  return `${written}: expected a whole number from ${LEAST_TRIALS} to ${MOST_TRIALS}; fewer trials say too little, more tire the ear.`;
}

export interface TrialsField {
  readonly element: HTMLElement;
  /** The count, or undefined after saying beside the field what is wrong with it. */
  read(): number | undefined;
}

export function createTrialsField(): TrialsField {
  const id = freshId("trials");
  const input = h("input", { id, type: "number", min: LEAST_TRIALS, max: MOST_TRIALS, value: USUAL_TRIALS });
  const fault = h("p", { class: "fault-text", id: `${id}-fault`, role: "status" });
  const check = () => {
    const read = readTrials(input.value);
    const isFault = typeof read === "string";
    fault.textContent = isFault ? read : "";
    if (isFault) {
      input.setAttribute("aria-invalid", "true");
      input.setAttribute("aria-describedby", fault.id);
    } else {
      input.removeAttribute("aria-invalid");
      input.removeAttribute("aria-describedby");
    }
    return read;
  };
  input.addEventListener("input", check);
  const label = h("label", { for: id }, `Trials, at least ${LEAST_TRIALS}`);
  return {
    element: h("div", { class: "field" }, label, input, fault),
    read: () => {
      const read = check();
      if (typeof read === "number") return read;
      input.focus();
      return undefined;
    },
  };
}
