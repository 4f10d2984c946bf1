import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build, Pickup } from "../../build-file/schema.ts";
import { pickupPlaces } from "./pickup-places.ts";

/** A harness with a single coil in every place that is free for one. */
export interface StoodIn {
  readonly build: Build;
  /** The harness's own lug for each lead of a pickup that only stands in. */
  readonly lugOf: ReadonlyMap<string, string>;
  /** Where the pickups stand in. */
  readonly places: readonly string[];
}

/** An ordinary single coil; its values decide nothing that is asked of it. */
const STAND_IN: Pickup = {
  kind: "pickup",
  coils: {
    coil: {
      resistance: 6000,
      inductance: 2.5,
      capacitance: 110e-12,
      winding: "forward",
      magnet: "north",
      output: 1,
    },
  },
};

/** No part of a person's own goes by it, since names begin with a letter. */
const nameOf = (index: number) => `_${index + 1}`;

export function withStandIns(build: Build): StoodIn {
  const places = pickupPlaces(build);
  const [jack] = partsOfKind(build, "jack")[0]!;
  const names = places.map((_, index) => nameOf(index));
  return {
    build: {
      ...build,
      parts: { ...build.parts, ...Object.fromEntries(names.map((name) => [name, STAND_IN])) },
      wires: [
        ...build.wires,
        ...names.flatMap((name, index) => [
          { from: `${name}.hot`, to: places[index]! },
          { from: `${name}.ground`, to: `${jack}.sleeve` },
        ]),
      ],
    },
    lugOf: new Map(
      names.flatMap((name, index) => [
        [`${name}.hot`, places[index]!],
        [`${name}.ground`, `${jack}.sleeve`],
      ]),
    ),
    places,
  };
}
