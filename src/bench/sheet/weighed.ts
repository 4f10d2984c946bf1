import type { BlockOrder } from "./order/search-order.ts";
import type { Piece } from "./pieces/piece.ts";
import type { Pieces } from "./pieces/pieces.ts";

/** An end that is somewhere else of its net than the build has it. */
export interface MovedEnd {
  readonly end: string;
  readonly from: string;
  readonly to: string;
  readonly text: string;
}

/** Why the schedule is as it is. Points stand for trouble at the bench; fewer are better. */
export interface Weighed {
  readonly landing: { readonly points: number; readonly isProven: boolean };
  readonly order: { readonly points: number; readonly hanging: number; readonly isProven: boolean };
  readonly moved: readonly MovedEnd[];
}

function reason(place: string, crowds: ReadonlyMap<string, number>, maxEnds: number): string {
  const ends = crowds.get(place) ?? 0;
  return ends > maxEnds ? `${place} would have had ${ends} ends in one joint` : `there are ends enough on ${place}`;
}

function movedEnds(pieces: readonly Piece[], crowds: ReadonlyMap<string, number>, maxEnds: number): MovedEnd[] {
  return pieces.flatMap(({ stops, insteadOf }): MovedEnd[] => {
    if (insteadOf === undefined) return [];
    const [end, to] = stops as [string, string];
    const text = `${end} goes to ${to} instead of ${insteadOf}, which is the same net: ${reason(insteadOf, crowds, maxEnds)}.`;
    return [{ end, from: insteadOf, to, text }];
  });
}

export function weighed({ pieces, landing, crowds }: Pieces, order: BlockOrder, maxEnds: number): Weighed {
  return {
    landing: { points: landing.points, isProven: landing.isProven },
    order: { points: order.points, hanging: order.hanging, isProven: order.isProven },
    moved: movedEnds(pieces, crowds, maxEnds),
  };
}
