import type { Part } from "../../build-file/schema.ts";
import { type Description, describePart } from "./describe-part.ts";

/** What the user already has: a part as in a build, and how many of it. */
export interface DrawerItem {
  readonly part: Part;
  readonly quantity: number;
}

/** What the drawer holds beyond the build's needs. */
export interface StaysOver extends Description {
  readonly quantity: number;
  /** Which of the drawer's items it is, from 0. */
  readonly drawer: readonly number[];
}

/** Parts in a drawer serve for any of the same value; a cap's tolerance does not matter there. */
function stockKey(part: Part): string {
  if (part.kind === "cap") return `cap ${part.capacitance.toPrecision(4)}`;
  if (part.kind === "resistor") return `resistor ${part.resistance.toPrecision(4)}`;
  return describePart(part).what;
}

interface Stock {
  readonly part: Part;
  readonly items: number[];
  left: number;
}

/** The drawer's items by value, taken out of as the build needs them. */
export class Drawer {
  readonly #stock = new Map<string, Stock>();

  constructor(items: readonly DrawerItem[]) {
    for (const [index, { part, quantity }] of items.entries()) {
      const key = stockKey(part);
      const stock = this.#stock.get(key) ?? { part, items: [], left: 0 };
      stock.items.push(index);
      stock.left += quantity;
      this.#stock.set(key, stock);
    }
  }

  /** As many of a part as the drawer has left, at most as many as are wanted. */
  take(part: Part, wanted: number): { readonly taken: number; readonly items: readonly number[] } {
    const stock = this.#stock.get(stockKey(part));
    if (!stock) return { taken: 0, items: [] };
    const taken = Math.min(wanted, stock.left);
    stock.left -= taken;
    return { taken, items: stock.items };
  }

  get staysOver(): StaysOver[] {
    return [...this.#stock.values()].flatMap(({ part, items, left }) =>
      left === 0 ? [] : [{ ...describePart(part), quantity: left, drawer: items }],
    );
  }
}
