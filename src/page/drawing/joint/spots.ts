import type { LaidGuard } from "../laid-guard.ts";
import type { Point } from "../point.ts";
import type { SeenLug } from "../view.ts";
import type { Schedule, Stop } from "./schedule.ts";

/** Drawing units from the lugs of a splice's leads, the way that these leave. */
const SPLICE_AWAY = 52;

function middleOf(points: readonly Point[]): Point {
  const mean = (axis: "x" | "y") => points.reduce((sum, each) => sum + each[axis], 0) / points.length;
  return { x: mean("x"), y: mean("y") };
}

/** A splice hangs off the lugs that its ends come from. */
function splicePlace(name: string, from: readonly SeenLug[]): SeenLug {
  const middle = middleOf(from);
  const leave = middleOf(from.map((lug) => lug.leave));
  const [x, y] = [middle.x + leave.x * SPLICE_AWAY, middle.y + leave.y * SPLICE_AWAY];
  // Its leads come from any side, and its name is not its first lead's.
  return { name: `splice ${name}`, label: "", x, y, leave: { x: 0, y: 0 }, beside: { x: 0, y: 0 } };
}

export type Spot = (stop: Pick<Stop, "lug" | "isSplice">) => SeenLug;

/** Where the stops of a sheet's pieces lie in the drawing. */
export function spotsOf(schedule: Schedule, laid: LaidGuard): Spot {
  const splices = new Map(
    schedule.joints
      .filter(({ kind }) => kind === "splice")
      .map(({ at, ends }) => [
        at,
        splicePlace(
          at,
          ends.map(({ from }) => laid.find(from)!),
        ),
      ]),
  );
  return ({ lug, isSplice }) => (isSplice ? splices.get(lug)! : laid.find(lug)!);
}
