import type { Contacts } from "./known-specs.ts";

/** What a lug's contacts are, whichever lugs they are with: equal wherever one contact table is another renamed. */
function signature(contacts: Contacts, lugs: number, lug: number): string {
  return [...contacts.subarray(lug * lugs, (lug + 1) * lugs)].sort((a, b) => a - b).join();
}

/**
 * Every way to rename the lugs of one contact table so that it becomes the other: `way[lug]` is the other's lug.
 * @param most ways to look for
 */
export function renamings(from: Contacts, to: Contacts, lugs: number, most: number): number[][] {
  const [own, other] = [from, to].map((contacts) =>
    Array.from({ length: lugs }, (_, lug) => signature(contacts, lugs, lug)),
  );
  // Found out at once here, and below only after every way to place all lugs but the last.
  if ([...own!].sort().join("|") !== [...other!].sort().join("|")) return [];
  const candidates = own!.map((sought) => other!.flatMap((each, at) => (each === sought ? [at] : [])));
  const ways: number[][] = [];
  const way: number[] = [];
  const fits = (lug: number, at: number) =>
    !way.includes(at) && way.every((other, earlier) => from[earlier * lugs + lug] === to[other * lugs + at]);
  const place = (lug: number): void => {
    if (lug === lugs) {
      ways.push([...way]);
      return;
    }
    for (const at of candidates[lug]!) {
      if (ways.length >= most) return;
      if (!fits(lug, at)) continue;
      way.push(at);
      place(lug + 1);
      way.pop();
    }
  };
  place(0);
  return ways;
}
