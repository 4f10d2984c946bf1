import type { Build } from "../../build-file/schema.ts";
import { settingGroups } from "./cell-groups.ts";
import { faintDepartures } from "./faint-departures.ts";
import type { ForetoldTap } from "./foretold-taps.ts";
import type { HeardTap } from "./hear-taps.ts";
import { phaseDepartures } from "./phase-departures.ts";
import { placedTaps } from "./placed-taps.ts";
import { deadRows, soundDepartures } from "./sound-departures.ts";
import { type TapCell, tapCells } from "./tap-cells.ts";
import type { TapDeparture } from "./tap-departure.ts";
import type { TapInput } from "./tap-transfers.ts";

/** Which rows sound in which setting and which way they swing, and what of it the drawing does not foretell. */
export interface TapMap {
  readonly cells: readonly TapCell[];
  /** The most that one cause explains first. */
  readonly departures: readonly TapDeparture[];
}

function mapBy(build: Build, heard: readonly HeardTap[], foretold: readonly ForetoldTap[]): TapMap {
  const cells = tapCells(heard, foretold);
  const { dead, departures } = deadRows(build, cells);
  const sounding = settingGroups(cells).flatMap((setting) => soundDepartures(build, setting, dead));
  return {
    cells,
    departures: [...departures, ...sounding, ...faintDepartures(build, cells), ...phaseDepartures(build, cells)],
  };
}

export function tapMap(build: Build, heard: readonly HeardTap[], input?: TapInput): TapMap {
  const { drawn, exchange } = placedTaps(build, heard, input);
  const plain = mapBy(build, heard, drawn);
  if (!exchange) return plain;
  const { cells, departures } = mapBy(build, heard, exchange.foretold);
  const all: TapDeparture[] = [{ kind: "exchanged", message: exchange.message }, ...departures];
  // One that leaves something over, and as much to be told of as the drawing does, explains nothing.
  return departures.length === 0 || all.length < plain.departures.length ? { cells, departures: all } : plain;
}
