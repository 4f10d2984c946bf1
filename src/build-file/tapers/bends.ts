import type { TrackShape } from "./track-shapes.ts";

/** Of what lies between two points: straight, or bent so that it joins the straight pieces beside it without a corner. */
const isStraight = (piece: number) => piece % 2 === 0;

function slopeOf({ turns, shares }: TrackShape, piece: number): number {
  return (shares[piece + 1]! - shares[piece]!) / (turns[piece + 1]! - turns[piece]!);
}

/** A slope at the end of a bend; more than three times the mean would turn back (F. N. Fritsch and R. E. Carlson, 1980). */
const held = (slope: number, mean: number) => Math.min(slope, 3 * mean);

function bent(shape: TrackShape, piece: number, at: number): number {
  const { turns, shares } = shape;
  const width = turns[piece + 1]! - turns[piece]!;
  const mean = slopeOf(shape, piece);
  const before = held(slopeOf(shape, piece - 1), mean);
  const after = piece + 2 < turns.length ? held(slopeOf(shape, piece + 1), mean) : mean;
  const t = (at - turns[piece]!) / width;
  // Cubic Hermite, by its four basis polynomials.
  return (
    shares[piece]! * (1 + 2 * t) * (1 - t) ** 2 +
    width * before * t * (1 - t) ** 2 +
    shares[piece + 1]! * t * t * (3 - 2 * t) +
    width * after * t * t * (t - 1)
  );
}

/** The share of the track below the wiper. @param turn 0 to 1 of the mechanical turn */
export function shareAt(shape: TrackShape, turn: number): number {
  const { turns, shares } = shape;
  const piece = Math.max(0, turns.findIndex((point) => point >= turn) - 1);
  if (!isStraight(piece)) return bent(shape, piece, turn);
  return shares[piece]! + slopeOf(shape, piece) * (turn - turns[piece]!);
}
