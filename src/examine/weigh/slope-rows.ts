import type { Point } from "../model/point.ts";
import type { View } from "../model/view.ts";
import type { Subject } from "./evidence.ts";

/** Values of a view's slots at a point, and which unknown moves each slot how. */
export interface Gathered {
  readonly values: Float64Array;
  /** Unknowns that move anything here, by index. */
  readonly unknowns: readonly number[];
  /** Triplets: slot, place in `unknowns`, slope. */
  readonly slots: Int32Array;
  readonly places: Int32Array;
  readonly slopes: Float64Array;
}

export function gather({ origins, dialOf }: View, build: Subject["build"], point: Point): Gathered {
  const values = new Float64Array(origins.length);
  const placeOf = new Map<number, number>();
  const [slots, places, slopes]: [number[], number[], number[]] = [[], [], []];
  const bySlot = new Map<string, Map<number, { unknown: number; slope: number }[]>>();
  for (const [at, { part, slot, fixed }] of origins.entries()) {
    if (fixed !== undefined) {
      values[at] = fixed;
      continue;
    }
    const made = point.slotsOf(build, part, dialOf(part));
    values[at] = made.values[slot]!;
    let known = bySlot.get(part);
    if (!known) {
      known = new Map();
      for (const each of made.slopes) known.set(each.slot, [...(known.get(each.slot) ?? []), each]);
      bySlot.set(part, known);
    }
    for (const { unknown, slope } of known.get(slot) ?? []) {
      let place = placeOf.get(unknown);
      if (place === undefined) {
        place = placeOf.size;
        placeOf.set(unknown, place);
      }
      slots.push(at);
      places.push(place);
      slopes.push(slope);
    }
  }
  return {
    values,
    unknowns: [...placeOf.keys()],
    slots: Int32Array.from(slots),
    places: Int32Array.from(places),
    slopes: Float64Array.from(slopes),
  };
}
