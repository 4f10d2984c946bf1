import { FIGURES, type Range } from "./figures.ts";
import { rangeText } from "./range-text.ts";
import type { WordName } from "./vocabulary/words.ts";
import { type Ask, type Where, type Wish, whereKey, whereWords } from "./wish.ts";

/** Two words that no sound can be at once. */
export interface Contradiction {
  readonly where: Where;
  readonly words: readonly [string, string];
  readonly text: string;
}

const apart = (low: number | undefined, high: number | undefined) =>
  low !== undefined && high !== undefined && low > high;

const NOUNS: Readonly<Partial<Record<Range["figure"], string>>> = { peakFrequency: "a peak", cutoff: "a cutoff" };

const boundsOf = (range: Range) => rangeText(range).replace(/^from /, "");

/** "a peak of 4 kHz to 7.5 kHz". */
function targetWords(range: Range): string {
  return `${NOUNS[range.figure] ?? FIGURES[range.figure].title} of ${boundsOf(range)}`;
}

/** Why two words' targets cannot both be reached, as a sentence; undefined where they can. */
function clash(first: WordName, a: Range, second: WordName, b: Range): string | undefined {
  const asks = (word: string, range: Range) => `“${word}” asks for ${targetWords(range)}`;
  if (a.figure === b.figure) {
    if (!apart(a.low, b.high) && !apart(b.low, a.high)) return undefined;
    return `${asks(first, a)}, “${second}” for ${boundsOf(b)}`;
  }
  // A peak stands over the level at 200 Hz, so the curve falls under it by 3 dB only above the peak.
  const [cutoff, peak] = a.figure === "cutoff" ? [a, b] : [b, a];
  if (cutoff.figure !== "cutoff" || peak.figure !== "peakFrequency" || !apart(peak.low, cutoff.high)) return undefined;
  const both = `${asks(first, a)}, “${second}” for ${targetWords(b)}`;
  return `${both}, and a cutoff never lies under its own peak`;
}

function clashesOf(a: Ask, b: Ask): string[] {
  return a.targets.flatMap((first) => b.targets.flatMap((second) => clash(a.word, first, b.word, second) ?? []));
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
        const both = `No sound in ${whereWords(wish.where)} is both “${first.word}” and “${second.word}”.`;
        const text = [both, ...clashes.map((why) => `${why}.`), "The search comes as near as it can to each."].join(
          " ",
        );
        found.set(`${whereKey(wish.where)} ${words.join()}`, { where: wish.where, words, text });
      }
    }
  }
  return [...found.values()];
}
