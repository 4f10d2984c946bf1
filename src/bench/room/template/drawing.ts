import type { Build } from "../../../build-file/schema.ts";
import { extentOf, type Outline, type Point, type Seat, seated, seatedPoint } from "../geometry/outline.ts";
import type { Measures } from "../measures.ts";
import { type PlacedPart, placedParts, shapesSaid } from "../placed-parts.ts";
import { checkMeasures } from "../read-outlines.ts";

/** A closed line or a circle of a template, in metres, in the guard's frame. */
export interface Drawn {
  readonly what: "guard" | "opening" | "hole" | "screw" | "cavity";
  readonly shape: { readonly points: Outline } | { readonly centre: Point; readonly diameter: number };
}

/** A part's middle, and what it is called. */
export interface Named {
  readonly at: Point;
  readonly text: string;
}

/**
 * What is drawn at 1:1, as seen from the front: the neck to the right, the treble side down. There y grows downwards, as it does
 * on paper, so that the guard's frame and the paper's are the same.
 */
export interface TemplateDrawing {
  readonly title: string;
  readonly drawn: readonly Drawn[];
  readonly named: readonly Named[];
  /** Everything, the bridge's middle among it. */
  readonly low: Point;
  readonly high: Point;
}

const pointsOf = ({ shape }: Drawn): readonly Point[] => {
  if ("points" in shape) return shape.points;
  const radius = shape.diameter / 2;
  const [x, y] = shape.centre;
  return [
    [x - radius, y - radius],
    [x + radius, y + radius],
  ];
};

const circle = (what: Drawn["what"], centre: Point, diameter: number): Drawn => ({ what, shape: { centre, diameter } });

/** What is cut out of the guard: as it was said, else as the part is sold; a pickup comes through as it is. */
function holesOf({ part, measures, preset, shapes }: PlacedPart, seat: Seat): Drawn[] {
  const what = part.kind === "pickup" ? "opening" : "hole";
  const { hole } = measures;
  if (typeof hole === "object" && "round" in hole) return [circle(what, [seat.x, seat.y], hole.round)];
  if (hole !== undefined) return shapesSaid(hole).map((points) => ({ what, shape: { points: seated(points, seat) } }));
  const body = shapes.find((shape) => shape.what === "body");
  if (part.kind === "pickup") return body ? [{ what, shape: { points: body.outline } }] : [];
  return preset?.bushing ? [circle(what, [seat.x, seat.y], preset.bushing.diameter / 1000)] : [];
}

/** A mark where a screw's diameter is not known: as fine as a drill is set on. */
const MARK_METRES = 0.001;

/** Screws as measured, else as the part is sold. */
function screwsOf({ measures, preset }: PlacedPart, seat: Seat): Drawn[] {
  const sold = preset?.screws;
  const ends = (span: number) => (span > 0 ? [-span / 2000, span / 2000] : [0]);
  const corners: Point[] = sold ? ends(sold.along).flatMap((x) => ends(sold.across).map((y): Point => [x, y])) : [];
  const diameter = measures.screws ? MARK_METRES : (sold?.diameter ?? 1000 * MARK_METRES) / 1000;
  return (measures.screws ?? corners).map((point) => circle("screw", seatedPoint(point, seat), diameter));
}

function guardDrawn({ guard, cavities }: Measures): Drawn[] {
  return [
    ...(guard.outline ? [{ what: "guard" as const, shape: { points: guard.outline } }] : []),
    ...cavities.map(({ outline }): Drawn => ({ what: "cavity", shape: { points: outline } })),
    ...(guard.screws ?? []).map((screw) => circle("screw", screw, guard.screwDiameter ?? MARK_METRES)),
  ];
}

/**
 * The holes, openings and screws of a guard over the cavities of a body.
 *
 * @throws PresolderError REQUEST_INVALID where a line crosses itself or a part is not in the build
 */
export function templateOf(build: Build, measures: Measures): TemplateDrawing {
  checkMeasures(build, measures);
  const parts = placedParts(build, measures).flatMap((part) => (part.seat ? [{ part, seat: part.seat }] : []));
  const drawn = [
    ...guardDrawn(measures),
    ...parts.flatMap(({ part, seat }) => [...holesOf(part, seat), ...screwsOf(part, seat)]),
  ];
  const named = parts.map(({ part, seat }): Named => ({ at: [seat.x, seat.y], text: part.words }));
  const bridge: Point = [0, 0];
  const extent = extentOf([bridge, ...named.map(({ at }) => at), ...drawn.flatMap(pointsOf)]);
  return { title: build.title || "Guard", drawn, named, ...extent };
}
