import { TURN_STEP_DEGREES } from "../../../build-file/turn-step.ts";
import { setAt } from "../../state/paths.ts";
import type { BuildSource } from "../../state/reading.ts";
import { type Placed, UNITS_PER_METRE } from "../arrange.ts";
import type { Point } from "../point.ts";

/** As a build file has it: metres, and whole degrees. */
export interface WrittenPlace {
  readonly x: unknown;
  readonly y: unknown;
  readonly turn?: unknown;
}

/** The largest coordinate that a build file may give. */
const MAX_METRES = 2;

/** A tenth of a millimetre is finer than any hand. */
export function metres(units: number): number {
  const value = Math.round((units / UNITS_PER_METRE) * 1e4) / 1e4 || 0;
  return Math.max(-MAX_METRES, Math.min(MAX_METRES, value));
}

export function placeAt({ x, y }: Point, turn = 0): WrittenPlace {
  return { x: metres(x), y: metres(y), turn };
}

/** The place of a part as it is written, where the drawing keeps to it; else where it is drawn. */
export function placeNow(source: BuildSource, { name, centre }: Placed): WrittenPlace {
  const place = source.parts[name]?.place as WrittenPlace | undefined;
  return place?.turn === undefined ? placeAt(centre) : place;
}

function numberOf(value: unknown, otherwise: number): number {
  return typeof value === "number" ? value : otherwise;
}

/** Moves a part by drawing units, towards the neck and the treble side. */
export function movedPart(source: BuildSource, placed: Placed, by: Point): BuildSource {
  if (!source.parts[placed.name]) return source;
  const { x, y, turn } = placeNow(source, placed);
  const at = {
    x: numberOf(x, metres(placed.centre.x)) * UNITS_PER_METRE + by.x,
    y: numberOf(y, metres(placed.centre.y)) * UNITS_PER_METRE + by.y,
  };
  return setAt(source, ["parts", placed.name, "place"], placeAt(at, numberOf(turn, 0)));
}

/** Turns a part to an angle, in degrees counter-clockwise as seen from the back. */
export function turnedTo(source: BuildSource, placed: Placed, turn: number): BuildSource {
  if (!source.parts[placed.name]) return source;
  return setAt(source, ["parts", placed.name, "place"], { ...placeNow(source, placed), turn });
}

/** Turns a part by steps, counter-clockwise as seen from the back. */
export function turnedPart(source: BuildSource, placed: Placed, steps: number): BuildSource {
  if (!source.parts[placed.name]) return source;
  const place = placeNow(source, placed);
  const turn = (numberOf(place.turn, 0) + steps * TURN_STEP_DEGREES) % 360;
  return setAt(source, ["parts", placed.name, "place"], { ...place, turn: turn || 0 });
}
