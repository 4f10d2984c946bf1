import type { Build } from "../../build-file/schema.ts";
import { grouped, rowKey } from "./cell-groups.ts";
import type { TapCell } from "./tap-cells.ts";
import type { TapDeparture } from "./tap-departure.ts";
import { rowCalled } from "./tap-words.ts";
import { medianOf } from "./without-hum.ts";

/** Poles, magnets and hands make rows differ by less than this. dB, from memory. */
const FAINT_DB = -7.5;

/** Rows that are heard too faintly wherever they are heard: weak, or heard through a neighbour alone. */
export function faintDepartures(build: Build, cells: readonly TapCell[]): TapDeparture[] {
  return grouped(
    cells.filter(({ isExpected }) => isExpected),
    rowKey,
  ).flatMap((row): TapDeparture[] => {
    const over = row.flatMap((cell) => (cell.sounds === false || cell.over === undefined ? [] : [cell.over]));
    const decibels = over.length > 0 ? medianOf(over) : 0;
    if (decibels > FAINT_DB) return [];
    const { pickup, coil } = row[0]!.heard.step;
    const message =
      `The ${rowCalled(build, { pickup, coil })} is ${Math.round(-decibels)} dB fainter than it should be: its coil is dead and heard ` +
      "through its neighbour, some of its turns are shorted, or its magnet is weak.";
    return [{ kind: "faint", pickup, coil, message }];
  });
}
