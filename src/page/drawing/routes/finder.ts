import type { Point } from "../point.ts";
import { type Board, COST, STEP } from "./board.ts";
import { Queue } from "./queue.ts";

/** A lug as a wire ends there. */
export interface End extends Point {
  /** Among the board's lugs. */
  readonly index: number;
  readonly leave: Point;
}

/** The eight steps from a point, clockwise from the right: odd ones are diagonal. */
const STEP_X = [1, 1, 0, -1, -1, -1, 0, 1];
const STEP_Y = [0, 1, 1, 1, 0, -1, -1, -1];
/** Of a first point, which no step led to. */
const ANY = 8;
/** By eighths of a turn between two steps. */
const BENDS = [0, COST.bend, COST.corner, COST.back, COST.back, COST.back, COST.corner, COST.bend];
/** What is left to go counts more than it must: far fewer points are looked at, and the way is hardly worse. */
const GREED = 1.8;
/** What each point of the shorter side adds to the longer one, where both are gone diagonally. */
const BESIDES = COST.diagonal - COST.straight;
/** How far from a lug a wire's first point may be. */
const FIRST = 17;
const ANY_WAY = 8;
/** What it costs to leave a lug the other way than its wires leave. */
const AGAINST = 60;

interface Start {
  readonly cell: number;
  readonly cost: number;
}

/** Finds the cheapest way over a board, one wire after the other: around lugs, texts and, as far as it is worth it, other wires. */
export class Finder {
  readonly #board: Board;
  readonly #cost: Float64Array;
  readonly #cameFrom: Int32Array;
  readonly #way: Uint8Array;
  /** The search in which a point was reached, and the one in which it was gone on from. */
  readonly #seen: Uint16Array;
  readonly #done: Uint16Array;
  readonly #queue = new Queue();
  #search = 0;

  constructor(board: Board) {
    this.#board = board;
    const size = board.columns * board.rows;
    this.#cost = new Float64Array(size);
    this.#cameFrom = new Int32Array(size);
    this.#way = new Uint8Array(size);
    this.#seen = new Uint16Array(size);
    this.#done = new Uint16Array(size);
  }

  /** The points of the cheapest way, or undefined where there is none. @param clear drawing units from other lugs */
  find(from: End, to: End, clear: number): number[] | undefined {
    const goals = new Map(this.#starts(to, from, clear).map(({ cell, cost }) => [cell, cost]));
    this.#search += 1;
    this.#queue.clear();
    for (const { cell, cost } of this.#starts(from, to, clear)) this.#reach(cell, -1, ANY, cost, to);
    const last = this.#goOn(goals, from, to, clear);
    if (last < 0) return undefined;
    const cells = [];
    for (let cell = last; cell >= 0; cell = this.#cameFrom[cell]!) cells.push(cell);
    return cells.reverse();
  }

  /** Points near a lug to start from. */
  #starts(end: End, other: End, clear: number): Start[] {
    const board = this.#board;
    const isAny = end.leave.x === 0 && end.leave.y === 0;
    return board.cellsIn({ x: end.x, y: end.y, width: 2 * FIRST, height: 2 * FIRST }).flatMap((cell) => {
      const { x, y } = board.pointAt(cell);
      const [dx, dy] = [x - end.x, y - end.y];
      const away = Math.hypot(dx, dy);
      if (away > FIRST || !board.isFree(cell, end.index, other.index, clear)) return [];
      const along = away < 1 ? 1 : (dx * end.leave.x + dy * end.leave.y) / away;
      const turn = isAny ? ANY_WAY : ((1 - along) / 2) * AGAINST;
      return [{ cell, cost: (away * COST.straight) / STEP + turn + board.extra[cell]! / 2 }];
    });
  }

  #reach(cell: number, before: number, way: number, cost: number, to: End): void {
    const { columns, left, top } = this.#board;
    this.#seen[cell] = this.#search;
    this.#cost[cell] = cost;
    this.#cameFrom[cell] = before;
    this.#way[cell] = way;
    const column = cell % columns;
    const dx = Math.abs(column - (to.x - left) / STEP);
    const dy = Math.abs((cell - column) / columns - (to.y - top) / STEP);
    const rest = dx > dy ? dx * COST.straight + dy * BESIDES : dy * COST.straight + dx * BESIDES;
    this.#queue.push(cost + GREED * rest, cell);
  }

  /** Goes on from the most promising point until no way can be cheaper than the one found. @returns its last point, or −1 */
  #goOn(goals: ReadonlyMap<number, number>, from: End, to: End, clear: number): number {
    const board = this.#board;
    const { columns, extra, guarded } = board;
    const [queue, costs, seen, done] = [this.#queue, this.#cost, this.#seen, this.#done];
    const search = this.#search;
    let [best, bestCost] = [-1, Number.POSITIVE_INFINITY];
    while (!queue.isEmpty && queue.leastKey() < bestCost) {
      const cell = queue.pop();
      if (done[cell] === search) continue;
      done[cell] = search;
      const here = costs[cell]!;
      const goal = goals.get(cell);
      if (goal !== undefined && here + goal < bestCost) [best, bestCost] = [cell, here + goal];
      const before = this.#way[cell]!;
      for (let way = 0; way < 8; way++) {
        const [dx, dy] = [STEP_X[way]!, STEP_Y[way]!];
        const next = cell + dy * columns + dx;
        if (done[next] === search) continue;
        if (guarded[next] !== 0 && !board.isFree(next, from.index, to.index, clear)) continue;
        const length = (way & 1) === 0 ? COST.straight : COST.diagonal + board.crossedBy(cell, dx, dy) * COST.wire;
        const bend = before === ANY ? 0 : BENDS[(way - before) & 7]!;
        const cost = here + length + bend + extra[next]!;
        if (seen[next] !== search || cost < costs[next]!) this.#reach(next, cell, way, cost, to);
      }
    }
    return best;
  }
}
