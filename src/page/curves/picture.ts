import type { LevelView } from "../state/app-state.ts";
import type { Band } from "./band.ts";
import type { Family } from "./family.ts";

/** What the plot shows, on the page and in every file saved from it. */
export interface Picture {
  readonly family: Family;
  readonly view: LevelView;
  readonly band: Band | undefined;
}
