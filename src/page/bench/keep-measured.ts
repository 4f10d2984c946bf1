import type { KeptValue } from "../../shelf/guard.ts";
import { h } from "../dom/element.ts";
import type { Bench } from "../start/bench.ts";

/** Puts what stands in the table of readings with the guard on the shelf. @param read what was measured, as it was written */
export function createKeepMeasured(bench: Bench, read: () => readonly KeptValue[]): HTMLElement {
  const told = h("p", { class: "hint", role: "status" });
  const button = h("button", { type: "button" }, "Keep these readings on the shelf");
  button.addEventListener("click", async () => {
    const values = read();
    if (values.length === 0) {
      told.textContent = "Enter at least one reading.";
      return;
    }
    button.disabled = true;
    try {
      const { keepReadings } = await import("../shelf/keep-readings.ts");
      told.textContent = await keepReadings(bench, values);
    } catch (error) {
      told.textContent = `${(error as Error).message} The readings stand here still.`;
    } finally {
      button.disabled = false;
    }
  });
  return h("div", { class: "stack no-print" }, h("div", { class: "buttons" }, button), told);
}
