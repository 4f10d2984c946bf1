import { showQuantity } from "../../build-file/show-quantity.ts";
import type { KeptDrawer, KeptItem } from "../../drawer/kept-drawer.ts";
import { h } from "../dom/element.ts";
import type { DrawerTold } from "../engine/drawer-answer.ts";
import { countFault, measuredFault, measuredIn, priceFault, priceIn } from "./form/value-faults.ts";

type Change = (drawer: KeptDrawer) => KeptDrawer;

interface Row {
  readonly element: HTMLElement;
  show(item: KeptItem, told: DrawerTold["items"][number] | undefined): void;
}

const DIMENSIONS: Readonly<Record<string, "capacitance" | "resistance">> = {
  cap: "capacitance",
  pot: "resistance",
  resistor: "resistance",
};

/** The value that a part is sold as. */
function markedOn({ part }: KeptItem): string | number {
  const values = part as { resistance?: string | number; capacitance?: string | number };
  return values.capacitance ?? values.resistance!;
}

const without = <Key extends string>(item: KeptItem, key: Key): Omit<KeptItem, Key> => {
  const { [key]: _, ...rest } = item as Record<string, unknown>;
  return rest as Omit<KeptItem, Key>;
};

/** One line of the drawer: what it is, and what of it may be changed in its place. */
function createRow(first: KeptItem, edit: (change: Change) => void, told: (words: string) => void): Row {
  let item = first;
  let what = "";
  const name = h("p", { class: "drawer-what" });
  const held = h("p", { class: "hint" });
  const input = (label: string, fault: (text: string) => string | undefined, taken: (text: string) => KeptItem) => {
    const control = h("input", { type: "text", autocomplete: "off", size: 6 });
    control.addEventListener("change", () => {
      const text = control.value.trim();
      const wrong = fault(text);
      control.toggleAttribute("aria-invalid", wrong !== undefined);
      if (wrong !== undefined) return told(`${what}, ${label.toLowerCase()}: ${wrong}`);
      const next = taken(text);
      told("");
      edit((drawer) => ({ ...drawer, items: drawer.items.map((each) => (each.id === next.id ? next : each)) }));
    });
    const caption = h("span", {}, label);
    return { control, element: h("label", { class: "drawer-value" }, caption, control) };
  };
  const dimension = DIMENSIONS[first.part.kind];
  const count = input(
    "Owned",
    (text) => countFault(text, item.measured?.length ?? 0),
    (text) => ({ ...item, count: Number(text) }),
  );
  const measured = input(
    "Measured",
    (text) => measuredFault(measuredIn(text), dimension!, item.count ?? 1, markedOn(item)),
    (text) => ({ ...item, measured: measuredIn(text) }),
  );
  const price = input("Price of one", priceFault, (text) =>
    text === "" ? (without(item, "price") as KeptItem) : { ...item, price: priceIn(text) },
  );
  const remove = h("button", { type: "button", class: "small" }, "Take out");
  remove.addEventListener("click", () => {
    edit((drawer) => ({ ...drawer, items: drawer.items.filter(({ id }) => id !== item.id) }));
    told(`Taken out: ${what}.`);
  });
  const put = (control: HTMLInputElement, text: string) => {
    if (document.activeElement !== control) control.value = text;
  };
  const written = (value: string | number) => (typeof value === "number" ? showQuantity(value, dimension!) : value);
  return {
    element: h(
      "li",
      { class: "drawer-row" },
      h("div", {}, name, held),
      count.element,
      dimension && measured.element,
      price.element,
      remove,
    ),
    show: (next, description) => {
      item = next;
      what = description?.what ?? item.part.kind;
      const code = description?.code;
      name.textContent = code ? `${what}, printed ${code}` : what;
      const soldered = description?.soldered ?? 0;
      held.textContent = soldered > 0 ? `${soldered} of them soldered in` : "";
      remove.setAttribute("aria-label", `Take out ${what}`);
      for (const { control, element } of [count, measured, price])
        control.setAttribute("aria-label", `${element.firstChild!.textContent}: ${what}`);
      put(count.control, String(item.count ?? 1));
      put(measured.control, (item.measured ?? []).map(written).join(", "));
      put(price.control, item.price === undefined ? "" : String(item.price));
    },
  };
}

/** The parts of the drawer, each with a line that stays the same one however it changes. */
export function createEntryRows(edit: (change: Change) => void, told: (words: string) => void) {
  const element = h("ul", { class: "drawer-list" });
  const rows = new Map<string, Row>();
  const show = ({ items }: KeptDrawer, answer: DrawerTold | undefined) => {
    const ids = new Set(items.map(({ id }) => id));
    for (const [id, row] of rows) {
      if (ids.has(id)) continue;
      row.element.remove();
      rows.delete(id);
    }
    for (const [index, item] of items.entries()) {
      let row = rows.get(item.id);
      if (!row) {
        row = createRow(item, edit, told);
        rows.set(item.id, row);
        element.append(row.element);
      }
      row.show(item, answer?.items[index]);
    }
  };
  return { element, show };
}
