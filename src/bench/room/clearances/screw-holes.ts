import { millimetresText } from "../../../lengths.ts";
import { type Room, roomWithin, woodAt } from "../geometry/clearance.ts";
import { type Point, roundOutline } from "../geometry/outline.ts";
import type { Cavity, Measures } from "../measures.ts";
import { type Clearance, measured, notSaid } from "./clearance.ts";

interface Hole extends Room {
  readonly to: string;
  readonly tolerance: number;
}

function woodBeside(screw: Point, radius: number, cavity: Cavity, measures: Measures): Hole {
  const { clearance, where } = woodAt(screw, cavity.outline);
  const tolerance = (cavity.tolerance ?? measures.tolerance) + measures.tolerance;
  return { to: cavity.name, tolerance, clearance: clearance - radius, where };
}

/** The guard's own edge, where its line is said: a hole too near it breaks out. */
function toTheEdge(screw: Point, diameter: number, { guard, tolerance }: Measures): Hole[] {
  if (!guard.outline) return [];
  const hole = roundOutline(diameter).map(([x, y]): Point => [x + screw[0], y + screw[1]]);
  return [{ to: "the guard's edge", tolerance: 2 * tolerance, ...roomWithin(hole, guard.outline) }];
}

function messageOf({ clearance, to }: Hole, number: number): string {
  if (clearance >= 0) return `Screw ${number} has ${millimetresText(clearance)} of material to ${to}.`;
  return to === "the guard's edge"
    ? `Screw ${number} breaks out of the guard by ${millimetresText(-clearance)}.`
    : `Screw ${number} finds no wood: it is over ${to} by ${millimetresText(-clearance)}.`;
}

/** Whether each of the guard's screws finds wood, and stays within the guard where its line is said. */
export function screwClearances(measures: Measures): Clearance[] {
  const { screws = [], screwDiameter: diameter } = measures.guard;
  if (screws.length === 0) return [];
  const at = { part: "guard", kind: "screw holes" } as const;
  if (diameter === undefined)
    return [notSaid({ ...at, against: "wood", message: "diameter of the screws' holes not said" })];
  return screws.flatMap((screw, index) => {
    const rooms = [
      ...measures.cavities.map((cavity) => woodBeside(screw, diameter / 2, cavity, measures)),
      ...toTheEdge(screw, diameter, measures),
    ];
    if (rooms.length === 0) return [];
    const least = rooms.reduce((a, b) => (b.clearance < a.clearance ? b : a));
    const { clearance, where, tolerance, to } = least;
    return [measured({ ...at, against: to, clearance, where, tolerance, message: messageOf(least, index + 1) })];
  });
}
