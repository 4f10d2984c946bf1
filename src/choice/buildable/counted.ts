import { type Family, type FamilyQuestion, families } from "./families.ts";
import type { Stock } from "./stock.ts";
import { variants } from "./variants.ts";

export interface Counted {
  readonly count: number;
  /** Whether that is all; false where the counting stopped there. */
  readonly isAll: boolean;
}

export interface Wirings extends Counted {
  readonly families: readonly Family[];
}

const CHECK_EVERY = 256;
/** Guards of one wiring; the stock would hold some hundred different pots and caps. */
const MOST_OF_A_WIRING = 1e6;

/** How many guards each family makes: what decides it is the same for most of them. */
class GuardCounts {
  readonly #stock: Stock;
  readonly #known = new Map<string, number>();

  constructor(stock: Stock) {
    this.#stock = stock;
  }

  of(family: Family, most: number): number {
    const { layout, automatic, switched } = family;
    const key = JSON.stringify([layout, automatic.length > 0, switched.length, most]);
    let count = this.#known.get(key);
    if (count === undefined) {
      count = 0;
      for (const _ of variants(family, this.#stock)) if (++count >= most) break;
      this.#known.set(key, count);
    }
    return count;
  }
}

/** Every family that the stock has pots and caps for, up to so many. */
export function wiringsOf(stock: Stock, question: FamilyQuestion, most: number, checkpoint: () => void): Wirings {
  const found: Family[] = [];
  const counts = new GuardCounts(stock);
  let looked = 0;
  for (const family of families(stock, question)) {
    if (looked++ % CHECK_EVERY === 0) checkpoint();
    if (counts.of(family, 1) === 0) continue;
    if (found.length === most) return { families: found, count: most, isAll: false };
    found.push(family);
  }
  return { families: found, count: found.length, isAll: true };
}

/** How many guards these families make with all their pots and caps. */
export function countGuards({ families: all, isAll }: Wirings, stock: Stock): Counted {
  const counts = new GuardCounts(stock);
  const each = all.map((family) => counts.of(family, MOST_OF_A_WIRING));
  return {
    count: each.reduce((sum, count) => sum + count, 0),
    isAll: isAll && each.every((count) => count < MOST_OF_A_WIRING),
  };
}

/** What tells one family from another, whatever lies in the drawer beside it. */
export function familyKey({ layout, pickups, switched, automatic }: Family): string {
  return JSON.stringify([layout, [...pickups].map(([place, { key }]) => [place, key]), switched, automatic]);
}

/** So many of a list, from the first to the last of them. */
export function spread<T>(all: readonly T[], most: number): readonly T[] {
  if (all.length <= most) return all;
  return Array.from({ length: most }, (_, index) => all[Math.floor((index * all.length) / most)]!);
}
