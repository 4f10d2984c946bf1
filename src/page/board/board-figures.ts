import type { Cell } from "../cells/cell.ts";
import { cellEngine } from "../cells/cell-engine.ts";
import type { CellFigures } from "../cells/cell-figures.ts";
import { latestOnly } from "../dom/later.ts";
import type { AppStore } from "../state/app-state.ts";

/** Figures of cells as they become known. */
export class BoardFigures {
  readonly #store: AppStore;
  readonly #known = new Map<string, CellFigures>();
  readonly #latest = latestOnly();

  constructor(store: AppStore) {
    this.#store = store;
  }

  of({ key }: Cell): CellFigures | undefined {
    return this.#known.get(key);
  }

  /** The phrase is another one. */
  clear(): void {
    this.#known.clear();
  }

  /** Works out what is missing. @param found called at every cell @returns whether nothing else was asked for meanwhile */
  async complete(cells: readonly Cell[], found: () => void): Promise<boolean> {
    const isLatest = this.#latest();
    const { hand, stringAge: strings } = this.#store.state;
    for (const cell of cells) {
      if (this.#known.has(cell.key)) continue;
      const figures = await cellEngine.figures(cell.guard.reading.build, cell.settings, { hand, strings });
      if (!isLatest()) return false;
      this.#known.set(cell.key, figures);
      found();
    }
    return true;
  }
}
