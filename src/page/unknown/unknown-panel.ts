import { h } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { Bench } from "../start/bench.ts";
import { createLeadFinder } from "./lead-finder/lead-finder.ts";
import { createSwitchFinder } from "./switch-finder/switch-finder.ts";

/** What is on the bench and nobody knows: found out with a meter. */
export function createUnknownPanel(bench: Bench): HTMLElement {
  bringStyle("tools.css");
  const { store, editor } = bench;
  return h("div", { class: "sections" }, createLeadFinder(bench), createSwitchFinder(store, editor));
}
