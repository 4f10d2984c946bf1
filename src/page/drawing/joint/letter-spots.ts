import type { Point } from "../point.ts";

/** A line from the joint on. */
export interface LetteredLine {
  /** Its point at 0 for the joint to 1 for where a letter may stand at the farthest. */
  at(t: number): Point;
}

/** "A", "B", … for the ends of a joint in the order in which the sheet names them; none for a single one. */
export function letterOf(index: number, count: number): string {
  return count < 2 ? "" : String.fromCharCode("A".charCodeAt(0) + index);
}

const SAMPLES = 40;
/** Drawing units from the middle of a letter's disc to that of a lug or of another disc, and to another line. */
const FROM_LUG = 22;
const FROM_LETTER = 27;
const FROM_LINE = 18;
/** What a unit's way from the joint costs, so that of two free places the nearer is taken. */
const PER_UNIT = 0.002;

const away = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

function samplesOf({ at }: LetteredLine): Point[] {
  return Array.from({ length: SAMPLES }, (_, index) => at((index + 1) / SAMPLES));
}

/** How far off the nearest is, 1 and no more where it is as far as it should be. */
function room(point: Point, others: readonly Point[], apart: number): number {
  return others.reduce((least, other) => Math.min(least, away(point, other) / apart), 1);
}

/**
 * A place for a letter on each line of a joint: on the line itself, and as clear as can be of the other lines, of lugs and of the
 * letters before it; the shortest lines choose first.
 */
export function letterSpots(lines: readonly LetteredLine[], lugs: readonly Point[]): Point[] {
  const sampled = lines.map(samplesOf);
  const joint = lines.map(({ at }) => at(0));
  const length = (index: number) => away(joint[index]!, sampled[index]!.at(-1)!);
  const order = lines.map((_, index) => index).sort((a, b) => length(a) - length(b));
  const spots = new Map<number, Point>();
  for (const index of order) {
    const others = sampled.filter((_, other) => other !== index).flat();
    const taken = [...spots.values()];
    const worth = (point: Point) =>
      room(point, lugs, FROM_LUG) +
      room(point, others, FROM_LINE) +
      // Two letters on each other tell nothing at all.
      3 * room(point, taken, FROM_LETTER) -
      PER_UNIT * away(point, joint[index]!);
    spots.set(
      index,
      sampled[index]!.reduce((best, point) => (worth(point) > worth(best) ? point : best)),
    );
  }
  return lines.map((_, index) => spots.get(index)!);
}
