/** A dot's place on the picture, in any unit, y down. */
export interface Dot {
  readonly x: number;
  readonly y: number;
}

export type Direction = "left" | "right" | "up" | "down";

/** Across the way counts so many times as much as along it, so that an arrow goes where it points. */
const ACROSS = 2;

function steps({ x: dx, y: dy }: Dot, direction: Direction): { along: number; across: number } {
  if (direction === "left" || direction === "right")
    return { along: direction === "right" ? dx : -dx, across: Math.abs(dy) };
  return { along: direction === "down" ? dy : -dy, across: Math.abs(dx) };
}

/**
 * The dot that an arrow key goes to: the nearest that lies more along the arrow than across it. Dots in the very same place come one after
 * the other, to the right and down in their order, so that every one of them can be reached.
 */
export function dotTowards(dots: readonly Dot[], from: number, direction: Direction): number | undefined {
  const start = dots[from]!;
  const isForward = direction === "right" || direction === "down";
  const isSame = (dot: Dot) => dot.x === start.x && dot.y === start.y;
  const same = isForward
    ? dots.findIndex((dot, at) => at > from && isSame(dot))
    : dots.findLastIndex((dot, at) => at < from && isSame(dot));
  if (same >= 0) return same;
  let best: { readonly at: number; readonly away: number } | undefined;
  for (const [at, dot] of dots.entries()) {
    const { along, across } = steps({ x: dot.x - start.x, y: dot.y - start.y }, direction);
    if (along <= 0 || across > along * ACROSS) continue;
    const away = along + ACROSS * across;
    if (!best || away < best.away) best = { at, away };
  }
  return best?.at;
}

/** From left to right and, of those as far right, from the top: the next dot, or the one before, so that every one is come by. */
export function dotBeside(dots: readonly Dot[], from: number, by: 1 | -1): number | undefined {
  const order = [...dots.keys()].sort((a, b) => dots[a]!.x - dots[b]!.x || dots[a]!.y - dots[b]!.y || a - b);
  return order[order.indexOf(from) + by];
}

/** The dot nearest to a place, if it is no farther than that. */
export function dotAt(dots: readonly Dot[], place: Dot, within: number): number | undefined {
  let best: number | undefined;
  let least = within;
  for (const [at, dot] of dots.entries()) {
    const away = Math.hypot(dot.x - place.x, dot.y - place.y);
    if (away > least || (away === least && best !== undefined)) continue;
    least = away;
    best = at;
  }
  return best;
}
