/** How far a pot turns and over what of it its resistance changes, degrees, as data sheets give both. */
export interface Angles {
  readonly mechanical: number;
  readonly electrical: number;
}

/** What the usual shapes have flat at either end, as a share of the turn. */
const USUAL_FLAT = 0.05;
const HALF = 0.5;

/**
 * The turn of a usual shape that stands for one of a pot with these angles: both ends flat over half of what the angles differ
 * by, half turn and full turn where they were. A pot of 24 mm turns 300° ± 5°, and one of conductive polymer changes over 225°
 * ± 5° of them (data sheets); six of 16 mm had 15° flat at the bottom and 15 to 30° at the top (measurements published beside
 * B. Holmes and M. van Walstijn, DAFx-19, 2019).
 * @param turn 0 to 1
 */
export function usualTurn(angles: Angles, turn: number): number {
  if (turn > HALF) return 1 - usualTurn(angles, 1 - turn);
  const flat = (1 - angles.electrical / angles.mechanical) / 2;
  if (turn > flat) return HALF - ((HALF - turn) * (HALF - USUAL_FLAT)) / (HALF - flat);
  return turn === 0 ? 0 : (turn * USUAL_FLAT) / flat;
}
