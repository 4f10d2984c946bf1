import type { Build } from "../../build-file/schema.ts";
import { grouped, rowKey } from "./cell-groups.ts";
import type { TapCell } from "./tap-cells.ts";
import type { TapDeparture } from "./tap-departure.ts";
import { rowCalled } from "./tap-words.ts";
import { medianOf } from "./without-hum.ts";

/** Poles, magnets and hands make rows differ by less than this; two on one magnet are compared with each other. dB; a judgement, no source. */
const FAINT_DB = -7.5;
const FAINTER_THAN_OTHER_DB = -9.5;

interface Row {
  readonly pickup: string;
  readonly coil: string;
  /** Over what it should be, dB. */
  readonly over: number;
}

function rowsOf(cells: readonly TapCell[]): Row[] {
  const heard = cells.filter(({ sounds, over }) => sounds !== false && over !== undefined);
  return grouped(heard, rowKey).map((row) => {
    const { pickup, coil } = row[0]!.heard.step;
    return { pickup, coil, over: medianOf(row.map(({ over }) => over!)) };
  });
}

/** Rows that are heard too faintly wherever they are heard: weak, or heard through a neighbour alone. */
export function faintDepartures(build: Build, cells: readonly TapCell[]): TapDeparture[] {
  const rows = rowsOf(cells);
  return rows.flatMap(({ pickup, coil, over }): TapDeparture[] => {
    const other = rows.find((each) => each.pickup === pickup && each.coil !== coil);
    const isFaint = other ? over - other.over < FAINTER_THAN_OTHER_DB : over < FAINT_DB;
    if (!isFaint) return [];
    const by = Math.round(other ? other.over - over : -over);
    const than = other ? `its ${other.coil} coil` : "it should be";
    const through = other ? "its coil is dead and heard through the other, " : "";
    const message = `The ${rowCalled(build, { pickup, coil })} is ${by} dB fainter than ${than}: ${through}some of its turns are shorted, or its magnet is weak.`;
    return [{ kind: "faint", pickup, coil, message }];
  });
}
