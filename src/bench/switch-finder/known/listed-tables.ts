import { type Family, familiesOf } from "./families.ts";
import type { Contacts } from "./known-specs.ts";
import { labellings } from "./labellings.ts";

/** Every contact table that known switches of so many lugs and positions can have, as heard at found lugs. */
export interface ListedTables {
  readonly lugs: number;
  /** Pairs of found lugs, in the order of `masks`. */
  readonly pairs: readonly { readonly a: number; readonly b: number }[];
  /** `[table * pairs + pair]`: the positions in which it beeps, as bits. */
  readonly masks: Uint16Array;
  readonly count: number;
  /** How many tables each family has; one family's stand together. */
  readonly families: readonly number[];
}

function pairsOf(lugs: number): { a: number; b: number }[] {
  return Array.from({ length: lugs }, (_, a) =>
    Array.from({ length: lugs - a - 1 }, (_, rest) => ({ a, b: a + rest + 1 })),
  ).flat();
}

function masksOf({ contacts, lugs }: Family, pairs: ListedTables["pairs"]): Uint16Array {
  const roles = labellings(contacts, lugs);
  const count = roles.length / lugs;
  const masks = new Uint16Array(count * pairs.length);
  for (let table = 0; table < count; table++)
    for (const [at, { a, b }] of pairs.entries())
      masks[table * pairs.length + at] = contacts[roles[table * lugs + a]! * lugs + roles[table * lugs + b]!]!;
  return masks;
}

function list(lugs: number, positions: number): ListedTables {
  const pairs = pairsOf(lugs);
  const each = familiesOf(lugs, positions).map((family) => masksOf(family, pairs));
  const masks = new Uint16Array(each.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const some of each) {
    masks.set(some, at);
    at += some.length;
  }
  return {
    lugs,
    pairs,
    masks,
    count: masks.length / pairs.length,
    families: each.map(({ length }) => length / pairs.length),
  };
}

/** Made once for so many lugs and positions, of which there are a dozen. */
const kept = new Map<string, ListedTables>();

export function listedTables(lugs: number, positions: number): ListedTables {
  const key = `${lugs} ${positions}`;
  const tables = kept.get(key) ?? list(lugs, positions);
  kept.set(key, tables);
  return tables;
}

export function contactsAt({ lugs, pairs, masks }: ListedTables, table: number): Contacts {
  const contacts = new Int32Array(lugs * lugs);
  for (const [at, { a, b }] of pairs.entries()) {
    const mask = masks[table * pairs.length + at]!;
    contacts[a * lugs + b] = mask;
    contacts[b * lugs + a] = mask;
  }
  return contacts;
}

/** Where a contact table stands in the list. @throws RangeError where it is none of them */
export function indexOfTable({ lugs, pairs, masks, count }: ListedTables, contacts: Contacts): number {
  for (let table = 0; table < count; table++)
    if (pairs.every(({ a, b }, at) => masks[table * pairs.length + at] === contacts[a * lugs + b])) return table;
  throw new RangeError("not a table of these families");
}
