import type { Checkpoint } from "../../../checkpoint.ts";
import { listed } from "../../../english.ts";
import { millimetresText } from "../../../lengths.ts";
import { type Room, roomWithin } from "../geometry/clearance.ts";
import { extentGap } from "../geometry/outline.ts";
import type { Cavity, Measures } from "../measures.ts";
import type { PlacedPart, PlacedShape } from "../placed-parts.ts";
import { type Clearance, measured, notSaid } from "./clearance.ts";

interface Fit extends Room {
  readonly cavity: Cavity;
  readonly what: PlacedShape["what"];
}

/** The part's shape that has the least room in a cavity. */
function fitIn({ shapes }: PlacedPart, cavity: Cavity, { checkpoint }: Checkpoint): Fit {
  const fits = shapes.map(({ what, outline }): Fit => {
    checkpoint();
    return { cavity, what, ...roomWithin(outline, cavity.outline) };
  });
  return fits.reduce((least, fit) => (fit.clearance < least.clearance ? fit : least));
}

const depthRoom = ({ measures }: PlacedPart, { depth }: Cavity) =>
  depth === undefined || measures.depth === undefined ? undefined : depth - measures.depth;

/** Metres at least between a part and a cavity; nothing where the rectangles about them meet. */
const apartFrom = ({ shapes }: PlacedPart, { outline }: Cavity) =>
  Math.min(...shapes.map((shape) => extentGap(shape.outline, outline)));

/** The cavities that a part may lie in: of those not meant for others what is near it. */
function cavitiesFor(part: PlacedPart, { cavities }: Measures): readonly Cavity[] {
  const meant = cavities.filter((cavity) => cavity.for?.includes(part.name));
  if (meant.length > 0) return meant;
  const open = cavities.filter((cavity) => cavity.for === undefined);
  const nearest = Math.min(...open.map((cavity) => apartFrom(part, cavity)));
  return open.filter((cavity) => apartFrom(part, cavity) <= nearest);
}

/** Of several cavities the one that it goes into best, beside and below. */
function bestFit(part: PlacedPart, measures: Measures, checkpoint: Checkpoint): Fit | undefined {
  const fits = cavitiesFor(part, measures).map((cavity) => fitIn(part, cavity, checkpoint));
  const room = (fit: Fit) => Math.min(fit.clearance, depthRoom(part, fit.cavity) ?? Number.POSITIVE_INFINITY);
  return fits.reduce<Fit | undefined>((best, fit) => (best && room(best) >= room(fit) ? best : fit), undefined);
}

const HAS = {
  body: "It has",
  ears: "Its ears have",
  lugs: "Its lugs have",
  cable: "Its cable has",
} as const;
const IN_THE_WAY = { body: "It", ears: "Its ears", lugs: "Its lugs", cable: "Its cable" } as const;

function sideMessage({ what, clearance }: Fit, cavity: string): string {
  if (clearance >= 0)
    return `${HAS[what]} ${millimetresText(clearance)} to the wall of ${cavity} where it is tightest.`;
  return `${IN_THE_WAY[what]} and the wood of ${cavity} are in each other's way by ${millimetresText(-clearance)}.`;
}

const lineTolerance = (cavity: Cavity, { tolerance }: Measures) => (cavity.tolerance ?? tolerance) + tolerance;

function sideOf(part: PlacedPart, fit: Fit, measures: Measures): Clearance {
  const { cavity, clearance, where } = fit;
  return measured({
    part: part.name,
    against: cavity.name,
    kind: "side",
    clearance,
    where,
    tolerance: lineTolerance(cavity, measures),
    message: sideMessage(fit, cavity.name),
  });
}

const MEASURE_DEPTH = "depth not said: measure from the guard's underside to its lowest point";
const MEASURE_CAVITY = "depth of the cavity not said: measure from the face that the guard lies on to its floor";

function depthOf(part: PlacedPart, cavity: Cavity, { tolerance }: Measures): Clearance {
  const at = { part: part.name, against: cavity.name, kind: "depth" } as const;
  const room = depthRoom(part, cavity);
  if (room === undefined) {
    const open = [
      ...(part.measures.depth === undefined ? [MEASURE_DEPTH] : []),
      ...(cavity.depth === undefined ? [MEASURE_CAVITY] : []),
    ];
    return notSaid({ ...at, message: listed(open) });
  }
  const message =
    room >= 0
      ? `It has ${millimetresText(room)} to the floor of ${cavity.name}.`
      : `It reaches ${millimetresText(-room)} deeper than ${cavity.name} is.`;
  return measured({ ...at, clearance: room, tolerance: 2 * tolerance, message });
}

/** Beside and below a part, in the cavity that it is to lie in. */
export function cavityClearances(part: PlacedPart, measures: Measures, checkpoint: Checkpoint): Clearance[] {
  const open = { part: part.name, against: "a cavity", kind: "side" } as const;
  if (part.seat === undefined) return [notSaid({ ...open, message: "no place said: where it sits on the guard" })];
  if (part.shapes.length === 0)
    return [notSaid({ ...open, message: "outline not said: what of it lies under the guard" })];
  const fit = bestFit(part, measures, checkpoint);
  if (fit === undefined) return [notSaid({ ...open, message: "no cavity said that it may lie in" })];
  return [sideOf(part, fit, measures), depthOf(part, fit.cavity, measures)];
}
