import type { Build } from "../../build-file/schema.ts";
import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import { capitalised } from "../../english.ts";
import { faultAt } from "../../errors.ts";
import { MAX_ROOM_PAIRS } from "../../limits.ts";
import { type Asked, askedOf } from "./asked.ts";
import { clearancesBetween } from "./clearances/between-parts.ts";
import { bushingClearances } from "./clearances/bushing.ts";
import { type Clearance, leastFirst } from "./clearances/clearance.ts";
import { cavityClearances } from "./clearances/in-cavity.ts";
import { poleClearances } from "./clearances/pole-spacing.ts";
import { screwClearances } from "./clearances/screw-holes.ts";
import type { Outline } from "./geometry/outline.ts";
import type { Measures } from "./measures.ts";
import { type PlacedPart, type PlacedShape, placedParts } from "./placed-parts.ts";
import { checkMeasures } from "./read-outlines.ts";

/** A figure that was not measured but is as the part is sold. */
interface Taken {
  readonly part: string;
  readonly what: string;
  readonly source: string;
}

export interface RoomTold {
  /** The verdict, in a sentence first. */
  readonly text: string;
  /** The least first. */
  readonly clearances: readonly Clearance[];
  readonly asked: readonly Asked[];
  readonly figures: readonly Taken[];
  /** What the parts were taken to be, in the guard's frame. */
  readonly shapes: readonly ({ readonly part: string } & PlacedShape)[];
}

function takenOf(parts: readonly PlacedPart[]): Taken[] {
  return parts.flatMap(({ name, preset }) =>
    preset ? [{ part: name, what: preset.title, source: preset.source }] : [],
  );
}

const count = (number: number, one: string, more: string) => `${number} ${number === 1 ? one : more}`;

function verdictText(clearances: readonly Clearance[], words: ReadonlyMap<string, string>): string {
  const of = (verdict: Clearance["verdict"]) => clearances.filter((each) => each.verdict === verdict);
  const [stuck, tight, open] = [of("does not go in"), of("tight"), of("not said")];
  const first = ({ part, kind, message }: Clearance) => `${capitalised(words.get(part) ?? part)}, ${kind}: ${message}`;
  const left = open.length > 0 ? ` ${capitalised(count(open.length, "thing is", "things are"))} not said yet.` : "";
  if (stuck[0]) return `The guard does not go in. ${first(stuck[0])}${left}`;
  if (tight[0])
    return `The guard may go in, but it is tight within what the measures can tell. ${first(tight[0])}${left}`;
  if (clearances.length === open.length) return `Whether the guard goes in cannot be said yet.${left}`;
  const least = clearances[0]!;
  return open.length > 0
    ? `As far as it was measured, the guard goes in.${left} The least room so far: ${first(least)}`
    : `The guard goes in. The least room: ${first(least)}`;
}

/** @throws PresolderError LIMIT_EXCEEDED where going through all sides would take too long */
function checkEffort(parts: readonly PlacedPart[], { cavities }: Measures): void {
  const sides = (outlines: readonly Outline[]) => outlines.reduce((sum, { length }) => sum + length, 0);
  const ofParts = sides(parts.flatMap(({ shapes }) => shapes.map(({ outline }) => outline)));
  const pairs = ofParts * (ofParts + sides(cavities.map(({ outline }) => outline)));
  if (pairs <= MAX_ROOM_PAIRS) return;
  const message = `the lines of parts and cavities make ${pairs} pairs of sides; expected at most ${MAX_ROOM_PAIRS}, so say some with fewer points`;
  throw faultAt("LIMIT_EXCEEDED", "parts", message);
}

/**
 * Whether a loaded guard goes into a body: every part beside, below and against its neighbours, the poles against the strings,
 * threads against the plate, screws against the wood.
 *
 * @throws PresolderError REQUEST_INVALID where a line crosses itself or a part is not in the build, LIMIT_EXCEEDED where the lines
 * have too many points
 */
export function roomFor(build: Build, measures: Measures, checkpoint: Checkpoint = NO_CHECKPOINT): RoomTold {
  const parts = placedParts(build, measures);
  checkEffort(parts, measures);
  checkMeasures(build, measures);
  const clearances = leastFirst([
    ...parts.flatMap((part) => cavityClearances(part, measures, checkpoint)),
    ...clearancesBetween(parts, measures, checkpoint),
    ...parts.flatMap((part) => poleClearances(build, part, measures)),
    ...parts.flatMap((part) => bushingClearances(part, measures)),
    ...screwClearances(measures),
  ]);
  return {
    text: verdictText(clearances, new Map(parts.map(({ name, words }) => [name, words]))),
    clearances,
    asked: askedOf(parts, measures),
    figures: takenOf(parts),
    shapes: parts.flatMap(({ name, shapes }) => shapes.map((shape) => ({ part: name, ...shape }))),
  };
}
