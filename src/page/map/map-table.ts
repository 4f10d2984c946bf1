import { cellName } from "../cells/cell.ts";
import { showHz } from "../curves/units.ts";
import { h, replaceContent } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { type DrawnMap, namesOf } from "./drawn-map.ts";

/** The map for those who read it: every cell, the brightest last, written when it is opened. */
export function createMapTable(choose: (dot: number) => void): { element: HTMLElement; show(map: DrawnMap): void } {
  const content = h("div", {});
  const element = h("details", { class: "plain-fold" }, h("summary", {}, "The map as a table"), content);
  let map: DrawnMap | undefined;
  const draw = () => {
    if (!map || !element.open) return;
    const { dots, cells, alike } = map;
    const drawn = map;
    const order = [...dots.keys()].sort((a, b) => cells[a]!.brightnessHz - cells[b]!.brightnessHz);
    const rows = order.map((dot) => [
      h("button", { type: "button", class: "quiet map-cell", onclick: () => choose(dot) }, cellName(dots[dot]!)),
      showHz(cells[dot]!.brightnessHz),
      alike.equals[dot]!.length === 0 ? "no other" : namesOf(drawn, alike.equals[dot]!),
    ]);
    replaceContent(content, plainTable("Cells from dark to bright", ["Cell", "Brightness", "Passes for"], rows));
  };
  element.addEventListener("toggle", draw);
  return {
    element,
    show: (shown) => {
      map = shown;
      replaceContent(content);
      draw();
    },
  };
}
