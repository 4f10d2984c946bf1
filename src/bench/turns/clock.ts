/** Lugs of a pot that is not turned point to the bass side, down as seen from the back. */
const UNTURNED_HOURS = 6;
const DEGREES_AN_HOUR = 30;

/** Where a pot's middle lug points, as hours on a clock face seen from the back: "4", or "half past 4". @param turn degrees counter-clockwise */
export function clockOf(turn: number): string {
  const halves = Math.round((UNTURNED_HOURS * DEGREES_AN_HOUR - turn) / (DEGREES_AN_HOUR / 2));
  const within = ((halves % 24) + 24) % 24;
  const hour = Math.floor(within / 2) || 12;
  return within % 2 === 0 ? `${hour} o'clock` : `half past ${hour}`;
}
