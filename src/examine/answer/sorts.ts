import { FAULT_SHARES, type FaultKind } from "../../bench/faults/priors/fault-shares.ts";
import { capitalised } from "../../english.ts";
import type { Named } from "../weigh/candidates.ts";

/** What none of the takes tells apart, of one sort. */
export interface Sort {
  /** "Open connections". */
  readonly title: string;
  readonly count: number;
  /** A few of their messages, the likeliest first. */
  readonly examples: readonly string[];
  /** What would show most of them, as a sentence; null where nothing here would. */
  readonly shownBy: string | null;
}

const MOST_EXAMPLES = 3;

const PAIRS = { words: ["pair of departures", "pairs of departures"] } as const;

const messageOf = ({ faults }: Named) => faults.map(({ message }) => message).join(" And: ");

/**
 * Departures by sort, the largest sort first.
 * @param shownBy what would show these of one sort
 */
export function sortsOf(members: readonly Named[], shownBy: (members: readonly Named[]) => string | null): Sort[] {
  const bySort = new Map<FaultKind | "pair", Named[]>();
  for (const member of members) {
    if (member.faults.length === 0) continue;
    const sort = member.faults.length > 1 ? "pair" : member.faults[0]!.kind;
    bySort.set(sort, [...(bySort.get(sort) ?? []), member]);
  }
  return [...bySort]
    .map(([sort, all]): Sort => {
      const { words } = sort === "pair" ? PAIRS : FAULT_SHARES[sort];
      return {
        title: capitalised(words[all.length === 1 ? 0 : 1]),
        count: all.length,
        examples: all.slice(0, MOST_EXAMPLES).map(messageOf),
        shownBy: shownBy(all),
      };
    })
    .sort((a, b) => b.count - a.count);
}
