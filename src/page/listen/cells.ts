import type { RawSettings } from "../../build-file/settings.ts";
import { axisOf } from "../curves/axes.ts";
import type { Reading } from "../state/reading.ts";

/** The set as a table: a row a position, a column a tone. */
export interface Cells {
  readonly rows: readonly CellLine[];
  readonly columns: readonly CellLine[];
}

export interface CellLine {
  readonly label: string;
  /** What choosing it sets; empty where the build has no such control. */
  readonly settings: RawSettings;
}

export function cellsOf(reading: Reading): Cells {
  const lines = (axis: "position" | "tone", word: string, otherwise: string): CellLine[] => {
    const along = axisOf(reading, axis);
    if (!along) return [{ label: otherwise, settings: {} }];
    return along.values.map((value) => ({ label: `${word} ${value}`, settings: { [along.key]: value } }));
  };
  return { rows: lines("position", "position", "the guard"), columns: lines("tone", "tone", "as it is") };
}
