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

/** Every family that the stock has pots and caps for, up to so many. */
export function wiringsOf(stock: Stock, question: FamilyQuestion, most: number, checkpoint: () => void): Wirings {
  const found: Family[] = [];
  let looked = 0;
  for (const family of families(stock, question)) {
    if (looked++ % CHECK_EVERY === 0) checkpoint();
    if (variants(family, stock).next().done) continue;
    if (found.length === most) return { families: found, count: most, isAll: false };
    found.push(family);
  }
  return { families: found, count: found.length, isAll: true };
}

/** How many guards these families make with all their pots and caps. */
export function countGuards(
  { families: all, isAll }: Wirings,
  stock: Stock,
  most: number,
  checkpoint: () => void,
): Counted {
  let count = 0;
  for (const family of all) {
    checkpoint();
    for (const _ of variants(family, stock)) if (++count >= most) return { count: most, isAll: false };
  }
  return { count, isAll };
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
