import type { DrawerRequest, PartsListAnswer } from "../../contract/bench/bench.ts";
import { MAX_DRAWER_QUANTITY } from "../../limits.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { BuildSource } from "../state/reading.ts";
import { createAddToDrawer } from "./drawer/add-to-drawer.ts";
import { staysOverView } from "./drawer/stays-over.ts";
import { drawerOf, stockOf } from "./drawer/stock.ts";

function drawerInput(what: string, amount: number, onChange: (quantity: number) => void): HTMLInputElement {
  const input = h("input", {
    type: "number",
    min: 0,
    max: MAX_DRAWER_QUANTITY,
    value: amount,
    class: "short no-print",
    "aria-label": `In the drawer: ${what}`,
    "data-drawer": what,
  });
  input.addEventListener("change", () =>
    onChange(Math.max(0, Math.min(MAX_DRAWER_QUANTITY, Math.round(Number(input.value) || 0)))),
  );
  return input;
}

/** What to buy, with the codes printed on parts, what the drawer already has, and what stays over there. */
export function partsView(
  source: BuildSource,
  list: PartsListAnswer,
  drawer: readonly DrawerRequest[],
  onDrawer: (drawer: DrawerRequest[]) => void,
): HTMLElement {
  let { amounts, others } = stockOf(list, drawer);
  const tell = () => onDrawer(drawerOf({ amounts, others }, list.lines, source));
  const rows = list.lines.map((line, index) => [
    line.what,
    line.code ?? "–",
    String(line.quantity),
    [
      drawerInput(line.what, amounts[index]!, (quantity) => {
        amounts = amounts.map((amount, at) => (at === index ? quantity : amount));
        tell();
      }),
      h("span", { class: "print-only" }, String(amounts[index]!)),
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
    createAddToDrawer((item) => {
      others = [...others, item];
      tell();
    }),
    staysOverView(list, drawer, (items) => {
      others = others.filter((item) => !items.includes(item));
      tell();
    }),
    wire.length > 0 && plainTable("Wire", ["Colour", "Pieces", "Length in all"], wire),
    list.notes.map((text) => h("p", { class: "hint" }, text)),
  );
}
