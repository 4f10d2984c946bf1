import type { TapPlanAnswer } from "../../contract/measure/taps.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";

const clock = (seconds: number) => `${Math.floor(seconds / 60)}:${String(Math.round(seconds % 60)).padStart(2, "0")}`;

/** How to tap, and what when. */
export function tapPlanView({ how, cautions, steps }: TapPlanAnswer): HTMLElement {
  const list = (tag: "ol" | "ul", texts: readonly string[]) =>
    h(
      tag,
      {},
      texts.map((text) => h("li", {}, text)),
    );
  const rows = steps.map(({ position, row, at }, i) => [String(i + 1), position, row, clock(at)]);
  return h(
    "div",
    { class: "stack" },
    h("div", { class: "caution" }, list("ul", cautions)),
    list("ol", how),
    h(
      "details",
      {},
      h("summary", {}, `The plan: ${steps.length} steps`),
      plainTable("What to tap, and when", ["Step", "Switch", "Row", "From the first tap"], rows),
    ),
  );
}
