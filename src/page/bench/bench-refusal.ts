import { h } from "../dom/element.ts";

/** Why the bench gave no answer, in its own words; nothing where it answered. */
export function benchRefusal(fault: string): HTMLElement | false {
  return fault !== "" && h("p", { class: "fault-text" }, `The bench did not answer this: ${fault}`);
}
