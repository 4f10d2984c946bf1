import type { TapPlanAnswer } from "../../contract/measure/taps.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";

const clock = (seconds: number) => `${Math.floor(seconds / 60)}:${String(Math.round(seconds % 60)).padStart(2, "0")}`;

/** How to tap, and what when; its cautions stand above all of the panel. */
export function tapPlanView({ how, steps }: TapPlanAnswer): HTMLElement {
  const rows = steps.map(({ position, row, at }, i) => [String(i + 1), position, row, clock(at)]);
  return h(
    "div",
    { class: "stack" },
    h(
      "ol",
      {},
      how.map((text) => h("li", {}, text)),
    ),
    h(
      "details",
      {},
      h("summary", {}, `The plan: ${steps.length} steps`),
      plainTable("What to tap, and when", ["Step", "Switch", "Row", "From the first tap"], rows),
    ),
  );
}
