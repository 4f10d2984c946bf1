import type { Build } from "../schema.ts";
import { lugSpots } from "./lug-spots.ts";
import { type Spot, turnedSpot } from "./spot.ts";

/**
 * Where every lug of a build lies, in metres on the guard: x from the bridge towards the neck, y from the bass side towards the
 * treble side. Each part is turned as its place says.
 * @param places the middle of every part
 */
export function lugPlaces(build: Build, places: ReadonlyMap<string, Spot>): ReadonlyMap<string, Spot> {
  return new Map(
    Object.entries(build.parts).flatMap(([name, part]) => {
      const middle = places.get(name) ?? { x: 0, y: 0 };
      return [...lugSpots(part)].map(([local, spot]): [string, Spot] => {
        const { x, y } = turnedSpot(spot, part.place?.turn ?? 0);
        return [local === "" ? name : `${name}.${local}`, { x: middle.x + x, y: middle.y + y }];
      });
    }),
  );
}
