import type { DrawerRequest, PartsListAnswer } from "../../contract/bench/bench.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { BuildSource } from "../state/reading.ts";

const MAX_IN_DRAWER = 1000;

function drawerInput(line: PartsListAnswer["lines"][number], onChange: (quantity: number) => void): HTMLInputElement {
  const input = h("input", {
    type: "number",
    min: 0,
    max: MAX_IN_DRAWER,
    value: line.fromDrawer,
    class: "short no-print",
    "aria-label": `In the drawer: ${line.what}`,
  });
  input.addEventListener("change", () =>
    onChange(Math.max(0, Math.min(MAX_IN_DRAWER, Math.round(Number(input.value) || 0)))),
  );
  return input;
}

/** What to buy, with the codes printed on parts, and what the drawer already has. */
export function partsView(
  source: BuildSource,
  list: PartsListAnswer,
  onDrawer: (drawer: DrawerRequest[]) => void,
): HTMLElement {
  const quantities = list.lines.map((line) => line.fromDrawer);
  const tell = () =>
    onDrawer(
      list.lines.flatMap((line, index) => {
        const part = source.parts[line.parts[0]!];
        // It was read as a part of this build, or there would be no list.
        return quantities[index]! > 0 && part
          ? [{ part: part as DrawerRequest["part"], quantity: quantities[index]! }]
          : [];
      }),
    );
  const rows = list.lines.map((line, index) => [
    line.what,
    line.code ?? "–",
    String(line.quantity),
    [
      drawerInput(line, (quantity) => {
        quantities[index] = quantity;
        tell();
      }),
      h("span", { class: "print-only" }, String(line.fromDrawer)),
    ],
    String(line.toBuy),
  ]);
  const wire = list.wire.map(({ colour, pieces, metres }) => [
    `${colour} wire`,
    pieces === 1 ? "1 piece" : `${pieces} pieces`,
    `${metres.toFixed(2)} m`,
  ]);
  return h(
    "div",
    { class: "stack" },
    h("h3", {}, "Parts list"),
    plainTable("Parts", ["What", "Printed on it", "Needed", "In the drawer", "To buy"], rows),
    wire.length > 0 && plainTable("Wire", ["Colour", "Pieces", "Length in all"], wire),
    list.notes.map((text) => h("p", { class: "hint" }, text)),
  );
}
