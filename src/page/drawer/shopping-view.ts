import { csvCell, csvTable } from "../../csv.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { ShoppingTold } from "../engine/drawer-answer.ts";
import { saveFile } from "../server/save-file.ts";

const wireWords = ({ kind, colour }: ShoppingTold["wire"][number]) =>
  kind === "bare" ? "bare wire" : `${colour} ${kind} wire`;

const money = (amount: number) => amount.toFixed(2);

/** As a spreadsheet opens it. */
export function shoppingCsv({ lines, wire }: ShoppingTold, currency: string): string {
  const unit = currency === "" ? "" : ` (${currency})`;
  const rows = lines.map(({ what, code, count, price, guards }) => [
    csvCell(what),
    csvCell(code ?? ""),
    String(count),
    price === null ? "" : money(price),
    price === null ? "" : money(price * count),
    csvCell(guards.join(", ")),
  ]);
  const reels = wire.flatMap((each) =>
    each.short > 0 ? [[csvCell(`${wireWords(each)}, metres`), "", each.short.toFixed(2), "", "", ""]] : [],
  );
  return csvTable(
    ["what", "printed on it", "how many", `price of one${unit}`, `sum${unit}`, "for"],
    [...rows, ...reels],
  );
}

/** As a message or a slip of paper takes it. */
export function shoppingText({ lines, wire, total }: ShoppingTold, currency: string): string {
  const items = lines.map(({ what, code, count, price }) => {
    const printed = code ? `, printed ${code}` : "";
    return `${count} × ${what}${printed}${price === null ? "" : `: ${money(price * count)} ${currency}`.trimEnd()}`;
  });
  const reels = wire.flatMap((each) => (each.short > 0 ? [`${each.short.toFixed(2)} m ${wireWords(each)}`] : []));
  return [...items, ...reels, `Sum of known prices: ${money(total)} ${currency}`.trimEnd()].join("\n");
}

function printed(content: HTMLElement): void {
  document.body.classList.add("prints-shopping");
  content.classList.add("printed-shopping");
  addEventListener(
    "afterprint",
    () => {
      document.body.classList.remove("prints-shopping");
      content.classList.remove("printed-shopping");
    },
    { once: true },
  );
  print();
}

/** What is to be bought for the guards that are shopped for, together. */
export function shoppingView(told: ShoppingTold | null, currency: string, say: (words: string) => void): HTMLElement {
  if (!told) return h("p", { class: "hint" }, "Tick “Shop for it” at a guard above.");
  const short = told.wire.filter((each) => each.short > 0);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(shoppingText(told, currency));
      say("The shopping list is copied.");
    } catch {
      say("The browser does not let the page copy; save the list as CSV instead.");
    }
  };
  const csv = () => saveFile("shopping-list.csv", new Blob([shoppingCsv(told, currency)], { type: "text/csv" }));
  const table = plainTable(
    "To buy",
    ["What", "Printed on it", "How many", "Price of one", "For"],
    told.lines.map(({ what, code, count, price, guards }) => [
      what,
      code ?? "–",
      String(count),
      price === null ? "not known" : `${money(price)} ${currency}`.trimEnd(),
      guards.join(", "),
    ]),
  );
  const content = h(
    "div",
    { class: "stack" },
    told.lines.length > 0 ? table : h("p", { class: "verdict" }, "Every part is in the drawer."),
    told.lines.some(({ price }) => price !== null) &&
      h("p", {}, h("b", {}, `Sum of known prices: ${money(told.total)} ${currency}`.trimEnd())),
    !told.isCheapest &&
      h("p", { class: "hint" }, "Kits can be put together in more ways than were tried; there may be a cheaper one."),
    short.length > 0 &&
      h(
        "p",
        {},
        `Wire that the reels lack: ${short.map((each) => `${each.short.toFixed(2)} m ${wireWords(each)}`).join(", ")}.`,
      ),
    told.staysOver.length > 0 &&
      h(
        "details",
        {},
        h("summary", {}, "What stays over"),
        h(
          "ul",
          {},
          told.staysOver.map(({ what, count }) => h("li", {}, `${count} × ${what}`)),
        ),
      ),
  );
  return h(
    "div",
    { class: "stack" },
    content,
    h(
      "div",
      { class: "buttons no-print" },
      h("button", { type: "button", onclick: copy }, "Copy the list"),
      h("button", { type: "button", onclick: csv }, "Save as CSV"),
      h("button", { type: "button", onclick: () => printed(content) }, "Print it"),
    ),
  );
}
