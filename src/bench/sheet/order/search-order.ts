import type { Block } from "./blocks.ts";

/** In points that stand for trouble at the bench; common practice, no source. */
export const ORDER_POINTS = {
  /** For each joint made while a wire's other end hangs free. */
  hanging: 1,
  /** For each pair of blocks the other way round than the trade works: from the bottom control up, what leaves the guard last. */
  turnedRound: 12,
} as const;

export interface BlockOrder {
  /** Indexes of the blocks as given. */
  readonly order: readonly number[];
  readonly points: number;
  /** Joints made while some wire's other end hangs free, added up over wires. */
  readonly hanging: number;
  /** Whether no order has fewer points; false where the search was given up. */
  readonly isProven: boolean;
}

/** Orders tried before the best so far is taken; eight blocks have 40,320. */
const MAX_TRIED = 60_000;

/** For every piece with joints in more than one place, where in its blocks they are. */
interface Span {
  readonly at: readonly { readonly block: number; readonly index: number }[];
}

function spansOf(blocks: readonly Block[]): Span[] {
  const byPiece = new Map<number, { block: number; index: number }[]>();
  for (const [block, { joints }] of blocks.entries())
    for (const [index, { ends }] of joints.entries())
      for (const { piece } of ends) byPiece.set(piece.number, [...(byPiece.get(piece.number) ?? []), { block, index }]);
  return [...byPiece.values()].filter((at) => at.length > 1).map((at) => ({ at }));
}

/** How long wires hang in an order: from the first joint of each to its last. */
function hangingIn(blocks: readonly Block[], spans: readonly Span[], order: readonly number[]): number {
  const start: number[] = [];
  let made = 0;
  for (const block of order) {
    start[block] = made;
    made += blocks[block]!.joints.length;
  }
  return spans.reduce((sum, { at }) => {
    const places = at
      .filter(({ block }) => start[block] !== undefined)
      .map(({ block, index }) => start[block]! + index);
    if (places.length === 0) return sum;
    // A piece that is not finished hangs at least until what is placed so far is done.
    const last = places.length === at.length ? Math.max(...places) : made;
    return sum + last - Math.min(...places);
  }, 0);
}

/**
 * The order of blocks with the fewest points, by branch and bound: what hangs so far goes on hanging, so no way on costs less.
 * @param blocks in the trade's order
 */
export function searchOrder(blocks: readonly Block[], maxTried = MAX_TRIED): BlockOrder {
  const spans = spansOf(blocks);
  let best: number[] = blocks.map((_, index) => index);
  const pointsOf = (order: readonly number[], turned: number) =>
    ORDER_POINTS.hanging * hangingIn(blocks, spans, order) + ORDER_POINTS.turnedRound * turned;
  let bestPoints = pointsOf(best, 0);
  let tried = 0;
  const order: number[] = [];
  const go = (turned: number): void => {
    if (order.length === blocks.length) {
      const points = pointsOf(order, turned);
      if (points < bestPoints) [best, bestPoints] = [[...order], points];
      return;
    }
    for (let next = 0; next < blocks.length; next++) {
      if (order.includes(next) || tried >= maxTried) continue;
      tried++;
      // Each earlier block still to come is one that is passed over.
      const passed = blocks.filter((_, index) => index < next && !order.includes(index)).length;
      order.push(next);
      if (pointsOf(order, turned + passed) < bestPoints) go(turned + passed);
      order.pop();
    }
  };
  go(0);
  return { order: best, points: bestPoints, hanging: hangingIn(blocks, spans, best), isProven: tried < maxTried };
}
