import { type Box, smallTextBox } from "../bodies/text-boxes.ts";
import type { Point } from "../point.ts";
import type { SeenLug } from "../view.ts";

export const LUG_RADIUS = 7;
/** Half of the widest wire. */
const HALF_WIRE = 2.5;
interface Places {
  /** Unit vectors from the lug. */
  readonly ways: readonly Point[];
  /** Drawing units from the lug's edge, the nearest first. */
  readonly gaps: readonly number[];
}

function about(ways: number, gaps: readonly number[]): Places {
  const angles = Array.from({ length: ways }, (_, index) => (2 * Math.PI * index) / ways);
  return { ways: angles.map((angle) => ({ x: Math.cos(angle), y: Math.sin(angle) })), gaps };
}

const USUAL = about(12, [3, 9, 16, 25]);
/** Where the usual places did not do. */
const MORE = about(24, [3, 6, 10, 14, 19, 25, 32]);
/** What a place costs: to lie on something, by its area or by each point of a wire; to be away from where it stands best. */
const ON_TEXT = 40;
const ON_LUG = 60;
const ON_WIRE = 25;
const PER_GAP = 0.15;
const PER_TURN = 3;
/** Lines are looked up by squares of this many units. */
const SQUARE = 24;
/** No place costs as much that has nothing under it. */
const CROWDED = 20;
const ROUNDS = 3;
/** The one name that says nothing that the drawing does not. */
const PLAIN = "case";

export function overlap(a: Box, b: Box): number {
  const x = (a.width + b.width) / 2 - Math.abs(a.x - b.x);
  const y = (a.height + b.height) / 2 - Math.abs(a.y - b.y);
  return x > 0 && y > 0 ? Math.min(x, y) : 0;
}

/** How far a circle reaches into a box. */
export function reachInto(box: Box, { x, y }: Point, radius: number): number {
  const dx = Math.max(0, Math.abs(x - box.x) - box.width / 2);
  const dy = Math.max(0, Math.abs(y - box.y) - box.height / 2);
  return Math.max(0, radius - Math.hypot(dx, dy));
}

/** Points of lines, found by where they are. */
class Points {
  readonly #squares = new Map<number, Point[]>();

  constructor(lines: readonly (readonly Point[])[]) {
    for (const line of lines)
      for (const point of alongLine(line)) {
        const key = this.#key(Math.floor(point.x / SQUARE), Math.floor(point.y / SQUARE));
        const there = this.#squares.get(key);
        if (there) there.push(point);
        else this.#squares.set(key, [point]);
      }
  }

  within({ x, y, width, height }: Box, margin: number): number {
    const [halfX, halfY] = [width / 2 + margin, height / 2 + margin];
    let count = 0;
    for (let column = Math.floor((x - halfX) / SQUARE); column <= Math.floor((x + halfX) / SQUARE); column++)
      for (let row = Math.floor((y - halfY) / SQUARE); row <= Math.floor((y + halfY) / SQUARE); row++)
        for (const point of this.#squares.get(this.#key(column, row)) ?? [])
          if (Math.abs(point.x - x) < halfX && Math.abs(point.y - y) < halfY) count += 1;
    return count;
  }

  #key(column: number, row: number): number {
    return column * 4096 + row;
  }
}

/** Points three units apart along a line. */
export function alongLine(line: readonly Point[]): Point[] {
  const points: Point[] = [];
  for (const [index, point] of line.entries()) {
    const next = line[index + 1];
    points.push(point);
    if (!next) continue;
    const [dx, dy] = [next.x - point.x, next.y - point.y];
    const steps = Math.floor(Math.hypot(dx, dy) / 3);
    for (let step = 1; step < steps; step++)
      points.push({ x: point.x + (dx * step) / steps, y: point.y + (dy * step) / steps });
  }
  return points;
}

interface Place {
  readonly box: Box;
  readonly cost: number;
}

/** The places about a lug where its name may stand, with what they cost by themselves. */
function placesOf(lug: SeenLug, { ways, gaps }: Places, isClear: (box: Box) => number): Place[] {
  const { width, height } = smallTextBox(lug.label, lug);
  return ways.flatMap((way) => {
    const turn = lug.beside.x === 0 && lug.beside.y === 0 ? 0 : 1 - (way.x * lug.beside.x + way.y * lug.beside.y);
    return gaps.map((gap) => {
      const out = LUG_RADIUS + gap;
      const box = {
        x: lug.x + way.x * out + Math.sign(Math.round(way.x * 100)) * Math.min(1, Math.abs(way.x) * 1.5) * (width / 2),
        y: lug.y + way.y * out + Math.sign(Math.round(way.y * 100)) * Math.min(1, Math.abs(way.y) * 1.5) * (height / 2),
        width,
        height,
      };
      return { box, cost: (gap - gaps[0]!) * PER_GAP + turn * PER_TURN + isClear(box) };
    });
  });
}

/** @param places the cheapest by themselves first @param whole what one costs beside the others, never less than by itself */
function cheapest(places: readonly Place[], whole: (place: Place) => number): Place {
  let [best, least] = [places[0]!, Number.POSITIVE_INFINITY];
  for (const place of places) {
    if (place.cost >= least) break;
    const cost = whole(place);
    if (cost < least) [best, least] = [place, cost];
  }
  return best;
}

export interface Labels {
  /** The middle of a name, by its lug. */
  readonly labels: ReadonlyMap<string, Point>;
  /** Lugs whose name found no place without something under it. */
  readonly crowded: readonly SeenLug[];
}

/**
 * Where the names of lugs stand: near their lug, off wires, other lugs, other texts and each other.
 * @param lines of the wires
 * @param texts that stand already
 * @param takesTrouble whether to try more places
 */
export function placeLabels(
  lugs: readonly SeenLug[],
  lines: readonly (readonly Point[])[],
  texts: readonly Box[],
  takesTrouble = false,
): Labels {
  const points = new Points(lines);
  const named = lugs.filter(({ label }) => label !== "");
  const places = named.map((lug) => {
    const nearTexts = texts.filter((text) => near(text, lug, text.width / 2 + NEAR));
    const nearLugs = lugs.filter((other) => near(other, lug, NEAR));
    const cost = (box: Box) => {
      let sum = points.within(box, HALF_WIRE) * ON_WIRE;
      for (const text of nearTexts) sum += overlap(box, text) * ON_TEXT;
      for (const other of nearLugs) sum += reachInto(box, other, LUG_RADIUS + 2) * ON_LUG;
      return sum;
    };
    return placesOf(lug, takesTrouble ? MORE : USUAL, cost).sort((a, b) => a.cost - b.cost);
  });
  const chosen = places.map((all) => all[0]!);
  const neighbours = named.map((lug, index) =>
    [...named.keys()].filter((other) => other !== index && near(named[other]!, lug, 2 * NEAR)),
  );
  const whole = (index: number, { box, cost }: Place) => {
    let sum = cost;
    for (const other of neighbours[index]!) sum += overlap(box, chosen[other]!.box) * ON_TEXT;
    return sum;
  };
  for (let round = 0; round < ROUNDS; round++)
    for (const [index, all] of places.entries()) {
      chosen[index] = cheapest(all, (place) => whole(index, place));
    }
  const crowded = named.filter((lug, index) => lug.label !== PLAIN && whole(index, chosen[index]!) >= CROWDED);
  // Where a pot's back is buried in wires, everybody sees that it is its back.
  const isPlain = ({ label }: SeenLug, { cost }: Place) => label !== PLAIN || cost < ON_WIRE;
  const labels = new Map(
    named.flatMap((lug, index) => {
      const { box, cost } = chosen[index]!;
      return isPlain(lug, { box, cost }) ? [[lug.name, { x: box.x, y: box.y }] as const] : [];
    }),
  );
  return { labels, crowded };
}

/** Drawing units that a name reaches from its lug at most. */
const NEAR = 75;
const near = (a: Point, b: Point, reach: number) => Math.abs(a.x - b.x) < reach && Math.abs(a.y - b.y) < reach;
