import type { LaidGuard } from "../laid-guard.ts";
import type { Point } from "../point.ts";
import { routeWires } from "../routes/route-wires.ts";
import type { SeenLug } from "../view.ts";
import type { Schedule } from "./schedule.ts";
import { type Spot, spotsOf } from "./spots.ts";

/** All that the pictures of joints know of how the guard's drawing lays wires. */
export interface Way {
  readonly d: string;
  /** Its point at 0 for the start to 1 for the end. */
  at(t: number): Point;
}

/** Where a schedule's pieces go in the drawing, all of them laid beside each other once for every picture. */
export interface Ways {
  readonly spot: Spot;
  /** The way from one stop of a piece to the next, or back. */
  between(from: SeenLug, to: SeenLug): Way;
}

const keyOf = (from: SeenLug, to: SeenLug) => `${from.name} ${to.name}`;

function backwards({ d, at }: Way): Way {
  return { d, at: (t) => at(1 - t) };
}

function layWays(schedule: Schedule, laid: LaidGuard): Ways {
  const spot = spotsOf(schedule, laid);
  const ends = schedule.pieces.flatMap((piece) => {
    const stops = schedule.stopsOf(piece).map(spot);
    return stops.slice(1).map((to, index) => [stops[index]!, to] as const);
  });
  const lugs = [...new Map([...laid.ground.lugs, ...ends.flat()].map((lug) => [lug.name, lug])).values()];
  const { routes } = routeWires({ ...laid.ground, lugs }, ends);
  const ways = new Map<string, Way>();
  for (const [index, [from, to]] of ends.entries()) {
    ways.set(keyOf(from, to), routes[index]!);
    ways.set(keyOf(to, from), backwards(routes[index]!));
  }
  return { spot, between: (from, to) => ways.get(keyOf(from, to))! };
}

const kept = new WeakMap<Schedule, WeakMap<LaidGuard, Ways>>();

export function waysOf(schedule: Schedule, laid: LaidGuard): Ways {
  const ofSchedule = kept.get(schedule) ?? new WeakMap<LaidGuard, Ways>();
  kept.set(schedule, ofSchedule);
  const ways = ofSchedule.get(laid) ?? layWays(schedule, laid);
  ofSchedule.set(laid, ways);
  return ways;
}
