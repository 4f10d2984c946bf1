import { listed } from "../../english.ts";
import { FIGURES, type Range } from "./figures.ts";
import { rangeText } from "./range-text.ts";
import { type Ask, type Where, type Wish, whereKey, whereWords } from "./wish.ts";

/** Two words that no sound can be at once. */
export interface Contradiction {
  readonly where: Where;
  readonly words: readonly [string, string];
  readonly text: string;
}

/** Why two targets cannot both be reached; undefined where they can. */
function clash(a: Range, b: Range): string | undefined {
  const apart = (low: number | undefined, high: number | undefined) =>
    low !== undefined && high !== undefined && low > high;
  if (a.figure === b.figure) {
    if (!apart(a.low, b.high) && !apart(b.low, a.high)) return undefined;
    return `${FIGURES[a.figure].title} ${rangeText(a)} and ${rangeText(b)}`;
  }
  // A peak stands over the level at 200 Hz, so the curve falls under it by 3 dB only above the peak.
  const [cutoff, peak] = a.figure === "cutoff" ? [a, b] : [b, a];
  if (cutoff.figure !== "cutoff" || peak.figure !== "peakFrequency" || !apart(peak.low, cutoff.high)) return undefined;
  return `a peak ${rangeText(peak)} and a cutoff ${rangeText(cutoff)}, which would lie under its own peak`;
}

function clashesOf(a: Ask, b: Ask): string[] {
  return a.targets.flatMap((first) => b.targets.flatMap((second) => clash(first, second) ?? []));
}

/** Whatever is wished for in one place holds beside what is wished for everywhere. */
function asksAt(wish: Wish, all: readonly Wish[]): readonly Ask[] {
  if (wish.where.kind === "everywhere" || wish.where.kind === "anywhere") return wish.asks;
  return [...wish.asks, ...all.filter(({ where }) => where.kind === "everywhere").flatMap(({ asks }) => asks)];
}

/** Every pair of words that ask the same place for what no sound has. */
export function contradictionsIn(wishes: readonly Wish[]): Contradiction[] {
  const found = new Map<string, Contradiction>();
  for (const wish of wishes) {
    const asks = asksAt(wish, wishes);
    for (const [at, first] of asks.entries()) {
      for (const second of asks.slice(at + 1)) {
        const clashes = clashesOf(first, second);
        if (clashes.length === 0) continue;
        const words = [first.word, second.word] as const;
        const text = `${first.word} and ${second.word} in ${whereWords(wish.where)} ask for ${listed(clashes)}: no sound has both. The search comes as near as it can to each.`;
        found.set(`${whereKey(wish.where)} ${words.join()}`, { where: wish.where, words, text });
      }
    }
  }
  return [...found.values()];
}
