import { bitCount, type Heard } from "../heard.ts";
import { mayJoin, type Star, type StarState } from "./star-state.ts";

/** A pole with one throw to find, and a lug that may be it about one of the pole's commons. */
export interface LastThrow {
  readonly star: Star;
  readonly lug: number;
  readonly common: number;
}

/** The poles that lack one throw; undefined where some lack more, or nothing was heard of some. */
function lackingOne({ stars, unheard }: StarState): Star[] | undefined {
  if (unheard > 0 || stars.some(({ open }) => bitCount(open) > 1)) return undefined;
  return stars.filter(({ open }) => open !== 0);
}

/**
 * Ways to give the last loose lugs to the poles that lack one throw each, counted exactly over subsets (Ryser's and Bellman's
 * old device). Where a pole lacks two or more there are several ways in any case, since those could change places: then undefined.
 */
export function starCount(
  heard: Heard,
  state: StarState,
): { readonly count: number; readonly only?: LastThrow[] } | undefined {
  const lacking = lackingOne(state);
  if (!lacking) return undefined;
  const { loose } = state;
  const options = lacking.map((star) =>
    loose.map((lug) => star.ends.filter((end) => mayJoin(heard, lug, end, star.open))),
  );
  let ways = new Map<number, number>([[0, 1]]);
  for (const row of options) {
    const next = new Map<number, number>();
    for (const [taken, count] of ways)
      for (const [at, ends] of row.entries())
        if (ends.length > 0 && !((taken >> at) & 1)) {
          const key = taken | (1 << at);
          next.set(key, (next.get(key) ?? 0) + count * ends.length);
        }
    ways = next;
  }
  const count = ways.get(2 ** loose.length - 1) ?? 0;
  return count === 1 ? { count, only: theOnlyWay(lacking, loose, options) } : { count };
}

function theOnlyWay(
  lacking: readonly Star[],
  loose: readonly number[],
  options: readonly (readonly (readonly number[])[])[],
): LastThrow[] {
  const place = (row: number, taken: number): LastThrow[] | undefined => {
    if (row === lacking.length) return [];
    for (const [at, ends] of options[row]!.entries()) {
      if (ends.length === 0 || (taken >> at) & 1) continue;
      const rest = place(row + 1, taken | (1 << at));
      if (rest) return [{ star: lacking[row]!, lug: loose[at]!, common: ends[0]! }, ...rest];
    }
    return undefined;
  };
  return place(0, 0)!;
}
