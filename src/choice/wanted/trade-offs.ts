import { listed } from "../../english.ts";
import { FIGURES } from "./figures.ts";
import type { Ledger } from "./ledger.ts";
import { figureText, rangeText } from "./range-text.ts";
import type { Tried } from "./refine.ts";
import type { WishReached } from "./score.ts";
import { whereWords } from "./wish.ts";

/** A wish that the best guard misses, and what it would take. */
export interface TradeOff {
  /** Its number among the wishes. */
  readonly wish: number;
  /** What meets it and misses the least of the others; else what comes nearest to it. */
  readonly by: Tried;
  readonly met: boolean;
  readonly text: string;
}

/** "hum-free in position 2". */
export function wishWords({ where, asks }: Pick<WishReached, "where"> & { asks: readonly { word: string }[] }): string {
  return `${listed(asks.map(({ word }) => word))} in ${whereWords(where)}`;
}

/** "peak's height 2.1 dB (at least 4 dB)" of every target that is missed. */
export function missedWords({ asks, cell }: WishReached): string {
  if (!cell) return "there is no such place";
  return listed(
    asks.flatMap(({ targets }) =>
      targets
        .filter(({ short }) => short > 0)
        .map(
          (target) =>
            `${FIGURES[target.figure].title} ${figureText(target.figure, target.value)} (${rangeText(target)})`,
        ),
    ),
  );
}

function costs(best: Tried, other: Tried): string {
  const lost = other.outcome.wishes.filter(({ met, cost }, index) => !met && cost > best.outcome.wishes[index]!.cost);
  if (lost.length === 0) return "no other wish loses by it";
  return listed(lost.map((wish) => `${wishWords(wish)}: ${missedWords(wish)}`));
}

/** How much was looked at, so that nobody takes what was not found for what there is not. */
interface Looked {
  readonly trials: number;
  readonly exhaustive: boolean;
}

/** For every wish that the best guard misses, the nearest that something else comes to it, and at what cost. */
export function tradeOffsOf(best: Tried, ledger: Ledger, { trials, exhaustive }: Looked): TradeOff[] {
  const doubt = exhaustive ? "" : " One that was not tried may come nearer.";
  return best.outcome.wishes.flatMap((wish, index): TradeOff[] => {
    if (wish.met) return [];
    const meeting = ledger.meeting(index);
    if (meeting) {
      const text = `The best guard misses ${wishWords(wish)}: ${missedWords(wish)}. Of the ${trials} guards tried, the one that meets it and loses least by it gives up: ${costs(best, meeting)}.${exhaustive ? "" : " One that was not tried may lose less."}`;
      return [{ wish: index, by: meeting, met: true, text }];
    }
    const nearest = ledger.nearest(index)!;
    const own = nearest.outcome.wishes[index]!;
    const text = `None of the ${trials} guards tried meets ${wishWords(wish)}; the nearest of them comes to ${missedWords(own)}, and gives up: ${costs(best, nearest)}.${doubt}`;
    return [{ wish: index, by: nearest, met: false, text }];
  });
}
