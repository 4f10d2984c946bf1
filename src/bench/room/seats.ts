import type { Build, Part, Pickup } from "../../build-file/schema.ts";
import type { Seat } from "./geometry/outline.ts";
import type { Measures } from "./measures.ts";
import { stringsAt } from "./strings-at.ts";

/** The kinds that fill a cavity. Caps and resistors hang where there is room; a jack counts once something of it was measured. */
const FILLING: readonly Part["kind"][] = ["pickup", "pot", "switch"];

export function partsInside({ parts }: Build, measures: Measures): readonly (readonly [string, Part])[] {
  return Object.entries(parts).filter(([name, { kind }]) => FILLING.includes(kind) || name in measures.parts);
}

const DEGREES = 180 / Math.PI;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The middle of its coils; nothing unless each says how far from the bridge it is. */
export function distanceOf({ coils }: Pickup): number | undefined {
  const said = Object.values(coils).map(({ distance }) => distance);
  return said.every((distance) => distance !== undefined) ? mean(said) : undefined;
}

/** A slant is told from the first string to the last: counter-clockwise from the back, the treble end goes to the bridge. */
function slantDegrees({ coils }: Pickup, spread: number): number {
  const slant = mean(Object.values(coils).map(({ slant = 0 }) => slant));
  return Math.atan2(slant, spread) * DEGREES;
}

/** How wide the strings are taken to spread under a slanted pickup where nobody said: the usual pole spacing (`figures.ts`). */
const USUAL_SPREAD_METRES = 0.052;

/** Where a part sits: by its `place`, a pickup else by its coils' distance, on the centre line. Nothing where neither is said. */
export function seatOf(build: Build, [name, part]: readonly [string, Part], measures: Measures): Seat | undefined {
  const distance = part.kind === "pickup" ? distanceOf(part) : undefined;
  const at = part.place ?? (distance === undefined ? undefined : { x: distance, y: 0 });
  if (at === undefined) return undefined;
  if (part.place?.turn !== undefined) return { x: at.x, y: at.y, turn: part.place.turn };
  if (part.kind !== "pickup") return { x: at.x, y: at.y, turn: 0 };
  const spread = measures.parts[name]?.poleSpacing ?? stringsAt(build, measures, at.x) ?? USUAL_SPREAD_METRES;
  return { x: at.x, y: at.y, turn: slantDegrees(part, spread) };
}
