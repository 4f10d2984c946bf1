/** How far a pot turns and over what of it its resistance changes, degrees, as data sheets give both. */
export interface Angles {
  readonly mechanical: number;
  readonly electrical: number;
}

/** What the usual shapes have flat at either end, as a share of the turn. */
const USUAL_FLAT = 0.05;
const HALF = 0.5;

/** Straight between [x0, y0] and [x1, y1]. */
function between(x: number, [x0, y0]: readonly [number, number], [x1, y1]: readonly [number, number]): number {
  return y0 + ((x - x0) * (y1 - y0)) / (x1 - x0);
}

/**
 * The turn of a usual shape that stands for one of a pot with these angles: both ends flat over half of what the angles differ
 * by, half turn and full turn where they were. A pot of 24 mm turns 300° ± 5°, and one of conductive polymer changes over 225°
 * ± 5° of them (data sheets); six of 16 mm had 15° flat at the bottom and 15 to 30° at the top (measurements published beside
 * B. Holmes and M. van Walstijn, DAFx-19, 2019).
 * @param turn 0 to 1
 */
export function usualTurn({ mechanical, electrical }: Angles, turn: number): number {
  if (turn <= 0) return 0;
  const flat = (mechanical - electrical) / 2 / mechanical;
  if (turn > HALF) return 1 - usualTurn({ mechanical, electrical }, 1 - turn);
  if (turn <= flat) return between(turn, [0, 0], [flat, USUAL_FLAT]);
  return between(turn, [flat, USUAL_FLAT], [HALF, HALF]);
}
