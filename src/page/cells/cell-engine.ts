import { proxy } from "comlink";
import type { Build } from "../../build-file/schema.ts";
import type { RawSettings } from "../../build-file/settings.ts";
import type { PassesForOne } from "../../choice/compare/verdict.ts";
import type { Cover } from "../../choice/map/fewest-guards.ts";
import type { Playing } from "../../render/playing.ts";
import { WorkerLink } from "../engine/worker-link.ts";
import type { CellDesk, EqualsTold, MapQuestion, MapTold, Progress } from "./cell-desk.ts";
import type { CellFigures } from "./cell-figures.ts";

/** The sounds of cells beside the page's own thread; the worker starts with the first question. */
class CellEngine {
  readonly #link = new WorkerLink<CellDesk>("cell-worker");

  figures(build: Build, settings: RawSettings, playing: Playing): Promise<CellFigures> {
    return this.#link.ask((desk) => desk.figures(build, settings, playing));
  }

  /** @throws Error where there are too many cells, or another map was asked for meanwhile */
  map(question: MapQuestion, progress: Progress): Promise<MapTold> {
    return this.#link.ask((desk) => desk.map(question, proxy(progress)));
  }

  equals(passes: PassesForOne): Promise<EqualsTold> {
    return this.#link.ask((desk) => desk.equals(passes));
  }

  fewest(cells: readonly number[]): Promise<Cover> {
    return this.#link.ask((desk) => desk.fewest(cells));
  }
}

/** One for the whole page: the board and the map ask the same worker. */
export const cellEngine = new CellEngine();
