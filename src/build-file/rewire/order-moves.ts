import type { LugNumber } from "./lug-space.ts";
import type { Move } from "./moves.ts";

export interface Ordering {
  /** Places in the order to go through them where nothing speaks against it. */
  readonly places: readonly LugNumber[];
  readonly partOf: (lug: LugNumber) => string;
  /** What must be opened before the move. */
  readonly after: (move: Move) => readonly Move[];
}

export function placeOf({ strand, end }: Move): LugNumber {
  return strand.lugs[end];
}

/**
 * Moves by place, openings first, so that a lug is heated once: a place is due when all that is to be soldered there has been
 * opened elsewhere. Where places wait for each other, one of them is opened first and visited again.
 */
export function orderMoves(moves: readonly Move[], { places, partOf, after }: Ordering): Move[] {
  const left = new Set(moves);
  const before = new Map(moves.map((move) => [move, move.do === "make" ? after(move) : []]));
  const ordered: Move[] = [];
  const at = new Map<LugNumber, Move[]>();
  for (const move of moves) at.set(placeOf(move), [...(at.get(placeOf(move)) ?? []), move]);
  const pending = (place: LugNumber, what?: Move["do"]) =>
    (at.get(place) ?? []).filter((move) => left.has(move) && (what === undefined || move.do === what));
  const take = (taken: readonly Move[]) => {
    for (const move of taken) left.delete(move);
    ordered.push(...taken);
  };
  const isDue = (place: LugNumber) =>
    pending(place, "make").every((move) =>
      before.get(move)!.every((open) => !left.has(open) || placeOf(open) === place),
    );
  let last: LugNumber | undefined;
  for (;;) {
    const waiting = places.filter((place) => pending(place).length > 0);
    if (waiting.length === 0) return ordered;
    const due = waiting.filter(isDue);
    const next = due.find((place) => last !== undefined && partOf(place) === partOf(last)) ?? due[0];
    if (next === undefined) take(pending(waiting.find((place) => pending(place, "open").length > 0)!, "open"));
    else take([...pending(next, "open"), ...pending(next, "make")]);
    last = next;
  }
}
