import type { FigureName, Range } from "./figures.ts";
import { stepsShort } from "./figures.ts";
import type { Cell, Measured } from "./measured.ts";
import type { WordName } from "./vocabulary/words.ts";
import type { Where, Wish } from "./wish.ts";

/** A target beside what is reached. */
export interface Reached extends Range {
  readonly value: number | null;
  /** How far off it is, in steps of the figure; 0 where it is reached. */
  readonly short: number;
}

export interface AskReached {
  readonly word: WordName;
  readonly met: boolean;
  readonly targets: readonly Reached[];
}

/** A wish in the cell that counts for it. */
export interface WishReached {
  readonly where: Where;
  /** Null where the guard has no such place. */
  readonly cell: Cell | null;
  readonly met: boolean;
  /** Sum of the squares of what is missed, in steps. */
  readonly cost: number;
  readonly asks: readonly AskReached[];
}

const cost = (asks: readonly AskReached[]) =>
  asks.reduce((sum, { targets }) => targets.reduce((inner, { short }) => inner + short * short, sum), 0);

function reachedIn(wish: Wish, cell: Cell | null, figureOf: (figure: FigureName) => number | null): WishReached {
  const asks = wish.asks.map(({ word, targets }): AskReached => {
    const reached = targets.map((target) => {
      const value = figureOf(target.figure);
      return { ...target, value, short: stepsShort(target, value) };
    });
    return { word, targets: reached, met: reached.every(({ short }) => short === 0) };
  });
  return { where: wish.where, cell, asks, met: asks.every(({ met }) => met), cost: cost(asks) };
}

/** A wish as a guard reaches it. @param cells of the guard that the wish may mean; of "everywhere" the worst counts, else the best */
export function wishReached(wish: Wish, cells: readonly Cell[], measured: Measured): WishReached {
  if (cells.length === 0) return reachedIn(wish, null, () => null);
  const all = cells.map((cell) => reachedIn(wish, cell, (figure) => measured.valueOf(figure, cell)));
  const isWorse = (a: WishReached, b: WishReached) =>
    wish.where.kind === "everywhere" ? a.cost > b.cost : a.cost < b.cost;
  return all.reduce((counts, each) => (isWorse(each, counts) ? each : counts));
}
