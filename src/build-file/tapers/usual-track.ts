import { shareAt } from "./bends.ts";
import { TRACK_SHAPES } from "./track-shapes.ts";

const HALF_TURN = 0.5;
const MIDPOINTS = TRACK_SHAPES.map((shape) => shareAt(shape, HALF_TURN));
const [LEAST, MOST] = [MIDPOINTS[0]!, MIDPOINTS.at(-1)!];

/** Between two shapes as they are made, what has its own share at half turn; below the least of them, that one bent further. */
function upTo(midpoint: number, turn: number): number {
  if (midpoint <= LEAST) return shareAt(TRACK_SHAPES[0]!, turn) ** (Math.log(midpoint) / Math.log(LEAST));
  const upper = Math.max(
    1,
    MIDPOINTS.findIndex((each) => each >= midpoint),
  );
  const [low, high] = [MIDPOINTS[upper - 1]!, MIDPOINTS[upper]!];
  const weight = (midpoint - low) / (high - low);
  const [below, above] = [shareAt(TRACK_SHAPES[upper - 1]!, turn), shareAt(TRACK_SHAPES[upper]!, turn)];
  return below + weight * (above - below);
}

/**
 * The share of a track below its wiper, for a track with `midpoint` of its resistance below half turn: flat ends and, where it
 * is an audio track, the knee at about 60 % of the turn.
 * @param turn 0 to 1
 */
export function usualShare(midpoint: number, turn: number): number {
  if (turn <= 0) return 0;
  if (turn >= 1) return 1;
  if (turn === HALF_TURN) return midpoint;
  return midpoint <= MOST ? upTo(midpoint, turn) : 1 - upTo(1 - midpoint, 1 - turn);
}
