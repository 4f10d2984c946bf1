import type { Box } from "../bodies/text-boxes.ts";
import type { Point } from "../point.ts";

/** Drawing units between two of the points that wires may run over. */
export const STEP = 10;
/** How near a wire's line may come to a lug that it does not belong to: the lug's radius, half the wire, and air. */
export const CLEAR = 14;
/** Where that leaves no way: the least at which line and lug do not touch. */
export const TIGHT = 10.5;

const NONE = 255;

/** What a step costs besides its length, which counts by tenths of a unit: a crossing is worth a long way round. */
export const COST = {
  straight: 10,
  diagonal: 14,
  body: 8,
  pickup: 45,
  text: 500,
  name: 200,
  wire: 70,
  bend: 6,
  corner: 18,
  back: 80,
};

interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The points that wires may run over, in rows, with what they would run into there. Those of the edge are no way. */
export class Board {
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
  /** What a point costs besides the way to it: texts, bodies, wires that run over it. */
  readonly extra: Int32Array;
  /** How many wires run over a point. */
  readonly wires: Uint8Array;
  /** How many wires cross the square to the right of a point and below it, by either of its diagonals. */
  readonly falling: Uint8Array;
  readonly rising: Uint8Array;
  /** 0 where any wire may run, 1 where a lug is so near that `isFree` has to be asked, 2 at the edge. */
  readonly guarded: Uint8Array;
  /** The two lugs nearest to a point, one more than their index, and how far they are; 0 where none is near. */
  readonly #lugs: readonly [Uint16Array, Uint16Array];
  readonly #away: readonly [Uint8Array, Uint8Array];

  constructor(area: Area, lugs: readonly Point[]) {
    this.left = area.left - STEP;
    this.top = area.top - STEP;
    this.columns = Math.ceil((area.right - area.left) / STEP) + 3;
    this.rows = Math.ceil((area.bottom - area.top) / STEP) + 3;
    const size = this.columns * this.rows;
    this.extra = new Int32Array(size);
    this.wires = new Uint8Array(size);
    this.falling = new Uint8Array(size);
    this.rising = new Uint8Array(size);
    this.guarded = new Uint8Array(size);
    this.#lugs = [new Uint16Array(size), new Uint16Array(size)];
    this.#away = [new Uint8Array(size).fill(NONE), new Uint8Array(size).fill(NONE)];
    for (const [index, lug] of lugs.entries()) this.#addLug(index, lug);
    this.#guardEdge();
  }

  pointAt(cell: number): Point {
    return { x: this.left + (cell % this.columns) * STEP, y: this.top + Math.floor(cell / this.columns) * STEP };
  }

  /** Points within a box about a middle. */
  cellsIn({ x, y, width, height }: Box): number[] {
    const first = Math.max(1, Math.ceil((x - width / 2 - this.left) / STEP));
    const last = Math.min(this.columns - 2, Math.floor((x + width / 2 - this.left) / STEP));
    const upper = Math.max(1, Math.ceil((y - height / 2 - this.top) / STEP));
    const lower = Math.min(this.rows - 2, Math.floor((y + height / 2 - this.top) / STEP));
    const cells: number[] = [];
    for (let row = upper; row <= lower; row++)
      for (let column = first; column <= last; column++) cells.push(row * this.columns + column);
    return cells;
  }

  addCost(box: Box, cost: number): void {
    for (const cell of this.cellsIn(box)) this.extra[cell] = this.extra[cell]! + cost;
  }

  /** Whether a wire from one lug to another may run over a point. @param clear drawing units from other lugs */
  isFree(cell: number, from: number, to: number, clear: number): boolean {
    if (this.guarded[cell] !== 1) return this.guarded[cell] === 0;
    for (const rank of [0, 1] as const) {
      if (this.#away[rank][cell]! >= clear) return true;
      const lug = this.#lugs[rank][cell]! - 1;
      if (lug !== from && lug !== to) return false;
    }
    return true;
  }

  /** Wires that a diagonal step crosses between the points. @param dx 1 to the right, −1 to the left; dy likewise, down and up */
  crossedBy(cell: number, dx: number, dy: number): number {
    const corner = cell + (dx < 0 ? -1 : 0) + (dy < 0 ? -this.columns : 0);
    return dx === dy ? this.rising[corner]! : this.falling[corner]!;
  }

  /** Whether a wire that is laid runs over another, or across it. */
  meetsOthers(cells: readonly number[]): boolean {
    return cells.some((cell, index) => {
      if (this.wires[cell]! > 1) return true;
      const way = this.#diagonal(cells[index - 1], cell);
      return way !== undefined && this.crossedBy(cells[index - 1]!, way.dx, way.dy) > 0;
    });
  }

  /** Lays a wire along its points, or takes it up again. @param by 1 or −1 */
  lay(cells: readonly number[], by: 1 | -1): void {
    for (const [index, cell] of cells.entries()) {
      this.wires[cell] = this.wires[cell]! + by;
      this.extra[cell] = this.extra[cell]! + by * COST.wire;
      const way = this.#diagonal(cells[index - 1], cell);
      if (!way) continue;
      const corner = cells[index - 1]! + (way.dx < 0 ? -1 : 0) + (way.dy < 0 ? -this.columns : 0);
      const along = way.dx === way.dy ? this.falling : this.rising;
      along[corner] = along[corner]! + by;
    }
  }

  /** The step from one point to the next where it is a diagonal one. */
  #diagonal(before: number | undefined, cell: number): { dx: number; dy: number } | undefined {
    if (before === undefined) return undefined;
    const step = cell - before;
    if (Math.abs(step) === 1 || Math.abs(step) === this.columns) return undefined;
    return { dx: ((step + this.columns + 1) % this.columns) - 1, dy: Math.sign(step) };
  }

  #addLug(index: number, lug: Point): void {
    const reach = 2 * CLEAR;
    for (const cell of this.cellsIn({ ...lug, width: reach, height: reach })) {
      const { x, y } = this.pointAt(cell);
      const away = Math.hypot(x - lug.x, y - lug.y);
      if (away < CLEAR) this.guarded[cell] = 1;
      const [first, second] = this.#away;
      if (away < first[cell]!) {
        second[cell] = first[cell]!;
        this.#lugs[1][cell] = this.#lugs[0][cell]!;
        first[cell] = away;
        this.#lugs[0][cell] = index + 1;
      } else if (away < second[cell]!) {
        second[cell] = away;
        this.#lugs[1][cell] = index + 1;
      }
    }
  }

  #guardEdge(): void {
    const { columns, rows, guarded } = this;
    guarded.fill(2, 0, columns);
    guarded.fill(2, (rows - 1) * columns);
    for (let row = 0; row < rows; row++) {
      guarded[row * columns] = 2;
      guarded[row * columns + columns - 1] = 2;
    }
  }
}
