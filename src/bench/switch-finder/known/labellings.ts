import type { Contacts } from "./known-specs.ts";
import { renamings } from "./same-contacts.ts";

/** More lugs than this have more contact tables than are gone through one by one: 8! is 40 320. */
export const MOST_LISTED_LUGS = 8;

const EVERY = Number.POSITIVE_INFINITY;

/** Whether a labelling comes first of those that make the same contact table. */
function isFirst(labelling: readonly number[], symmetries: readonly (readonly number[])[]): boolean {
  return symmetries.every((symmetry) => {
    for (const lug of labelling) {
      const other = symmetry[lug]!;
      if (other !== lug) return other > lug;
    }
    return true;
  });
}

/** Every different contact table that lugs in any order make: `[table * lugs + found]` is the family's lug. */
export function labellings(contacts: Contacts, lugs: number): Uint8Array {
  const symmetries = renamings(contacts, contacts, lugs, EVERY);
  const found: number[] = [];
  const labelling: number[] = [];
  const place = (taken: number): void => {
    if (labelling.length === lugs) {
      if (isFirst(labelling, symmetries)) found.push(...labelling);
      return;
    }
    for (let lug = 0; lug < lugs; lug++) {
      if ((taken >> lug) & 1) continue;
      labelling.push(lug);
      place(taken | (1 << lug));
      labelling.pop();
    }
  };
  place(0);
  return Uint8Array.from(found);
}
