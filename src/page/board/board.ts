import type { Cell } from "../cells/cell.ts";

/** Keys of a keyboard's upper row, from the left. */
export const BOARD_KEYS = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0", "-", "="] as const;
export const MOST_ON_BOARD = BOARD_KEYS.length;

/** The cells on the listening board, each at its key. */
export class Board {
  #cells: readonly Cell[] = [];
  readonly #watchers = new Set<(cells: readonly Cell[]) => void>();

  get cells(): readonly Cell[] {
    return this.#cells;
  }

  get isFull(): boolean {
    return this.#cells.length >= MOST_ON_BOARD;
  }

  /** Calls the effect at once and at every change. */
  watch(effect: (cells: readonly Cell[]) => void): void {
    this.#watchers.add(effect);
    effect(this.#cells);
  }

  /** @returns how many of them went on: those that were there already count, those for which there is no room do not */
  add(cells: readonly Cell[]): number {
    const known = new Set(this.#cells.map(({ key }) => key));
    const fresh = cells.filter(({ key }) => !known.has(key));
    const room = fresh.slice(0, MOST_ON_BOARD - this.#cells.length);
    if (room.length > 0) this.#put([...this.#cells, ...room]);
    return cells.length - fresh.length + room.length;
  }

  /** Puts other cells in the place of some, by their keys; one that is on the board already is not put twice. */
  exchange(others: ReadonlyMap<string, Cell>): void {
    if (others.size === 0) return;
    const cells = this.#cells.map((cell) => others.get(cell.key) ?? cell);
    this.#put([...new Map(cells.map((cell) => [cell.key, cell])).values()]);
  }

  remove(key: string): void {
    this.#put(this.#cells.filter((cell) => cell.key !== key));
  }

  clear(): void {
    this.#put([]);
  }

  #put(cells: readonly Cell[]): void {
    this.#cells = cells;
    for (const effect of this.#watchers) effect(cells);
  }
}
