import { type Box, smallTextBox } from "../bodies/text-boxes.ts";
import type { Point } from "../point.ts";
import type { SeenLug } from "../view.ts";
import { freeCurve } from "../wire-curves.ts";
import { Board, CLEAR, COST, STEP, TIGHT } from "./board.ts";
import { type End, Finder } from "./finder.ts";
import { alongLine, placeLabels, reachInto } from "./labels.ts";
import { type RoundedBow, roundedLine } from "./rounded.ts";

export interface Ground {
  readonly area: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
  readonly lugs: readonly SeenLug[];
  /** Nobody lays a wire across a pickup; across a pot's back or a switch, if need be. */
  readonly bodies: readonly (Box & { readonly isPickup: boolean })[];
  readonly texts: readonly Box[];
}

/** From a lug's middle to the middle of its name, where it stands best. */
function nameBox({ label, x, y, beside }: SeenLug): Box {
  const box = smallTextBox(label, { x, y });
  return { ...box, x: x + beside.x * (10 + box.width / 2), y: y + beside.y * (10 + box.height / 2) };
}

/** Lines between two points may cut a corner of what lies between them. */
const TEXT_ROOM = 12;
const NAME_ROOM = 8;

function grown(box: Box, by: number): Box {
  return { ...box, width: box.width + by, height: box.height + by };
}

function boardOf({ area, lugs, bodies, texts }: Ground): Board {
  const board = new Board(area, lugs);
  for (const body of bodies) board.addCost(body, body.isPickup ? COST.pickup : COST.body);
  for (const box of texts) board.addCost(grown(box, TEXT_ROOM), COST.text);
  for (const lug of lugs) if (lug.label !== "") board.addCost(grown(nameBox(lug), NAME_ROOM), COST.name);
  return board;
}

const CORNER_ROOM = 26;

type Ends = readonly [SeenLug, SeenLug];

/** The wires of a guard on a board: short ones are laid first, then each that meets others once more with all of them in place. */
class Wires {
  readonly #board: Board;
  readonly #finder: Finder;
  readonly #ends: readonly (readonly [End, End])[];
  readonly #ways: (number[] | undefined)[];
  readonly #order: readonly number[];

  constructor(board: Board, ground: Ground, ends: readonly Ends[]) {
    this.#board = board;
    this.#finder = new Finder(board);
    const indexOf = new Map(ground.lugs.map(({ name }, index) => [name, index]));
    const endOf = ({ name, x, y, leave }: SeenLug): End => ({ x, y, leave, index: indexOf.get(name)! });
    this.#ends = ends.map(([from, to]) => [endOf(from), endOf(to)]);
    this.#ways = ends.map(() => undefined);
    const length = (index: number) =>
      Math.hypot(ends[index]![0].x - ends[index]![1].x, ends[index]![0].y - ends[index]![1].y);
    this.#order = [...ends.keys()].sort((a, b) => length(a) - length(b));
    for (const index of this.#order) this.#lay(index);
    for (const index of this.#order) {
      const way = this.#ways[index];
      if (way && board.meetsOthers(way)) this.#layAnew(index);
    }
  }

  /** The corners of each wire, from lug to lug; undefined where lugs leave no way at all. */
  corners(): (Point[] | undefined)[] {
    return this.#ways.map((way, index) => {
      const [from, to] = this.#ends[index]!;
      return way && [from, ...way.map((cell) => this.#board.pointAt(cell)), to];
    });
  }

  /** Lays wires anew that run over boxes which have become dearer. */
  moveOff(wires: Iterable<number>): void {
    for (const index of wires) if (this.#ways[index]) this.#layAnew(index);
  }

  #lay(index: number): void {
    const [from, to] = this.#ends[index]!;
    const way = this.#finder.find(from, to, CLEAR) ?? this.#finder.find(from, to, TIGHT);
    this.#ways[index] = way;
    if (way) this.#board.lay(way, 1);
  }

  #layAnew(index: number): void {
    this.#board.lay(this.#ways[index]!, -1);
    this.#lay(index);
  }
}

function linesOf(wires: Wires, { lugs }: Ground, ends: readonly Ends[]): RoundedBow[] {
  const isNearLug = (at: Point) => lugs.some((lug) => Math.hypot(lug.x - at.x, lug.y - at.y) < CORNER_ROOM);
  return wires.corners().map((corners, index) => (corners ? roundedLine(corners, isNearLug) : freeLine(ends[index]!)));
}

/** Where lugs leave no way at all. */
function freeLine([from, to]: Ends): RoundedBow {
  const curve = freeCurve(from, to);
  const count = Math.ceil(Math.hypot(from.x - to.x, from.y - to.y) / STEP) + 2;
  return { ...curve, points: Array.from({ length: count + 1 }, (_, step) => curve.at(step / count)) };
}

export interface Routed {
  /** The way of every wire: clear of lugs that it does not belong to, past texts, with few crossings. */
  readonly routes: readonly RoundedBow[];
  /** The middle of a lug's name, by the lug. */
  readonly labels: ReadonlyMap<string, Point>;
}

/** How often wires are moved off names that found no place of their own. */
const ATTEMPTS = 4;
/** Wires that are nearer to a box than this lie on it. */
const ON_BOX = 3;

/** Lays the wires of a guard and finds the names of its lugs a place. @param ends the lugs of each wire */
export function routeWires(ground: Ground, ends: readonly Ends[]): Routed {
  const board = boardOf(ground);
  const wires = new Wires(board, ground, ends);
  for (let attempt = 1; ; attempt++) {
    const routes = linesOf(wires, ground, ends);
    const lines = routes.map(({ points }) => points);
    const { labels, crowded } = placeLabels(ground.lugs, lines, ground.texts, attempt > 1);
    if (crowded.length === 0 || attempt > ATTEMPTS) return { routes, labels };
    const boxes = crowded.map((lug) => nameBox(lug));
    for (const box of boxes) board.addCost(grown(box, NAME_ROOM + 2 * attempt), COST.text);
    const isOn = (line: readonly Point[]) =>
      alongLine(line).some((at) => boxes.some((box) => reachInto(box, at, ON_BOX) > 0));
    wires.moveOff(lines.flatMap((line, index) => (isOn(line) ? [index] : [])));
  }
}
