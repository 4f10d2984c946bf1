import type { Build } from "../../build-file/schema.ts";
import { settingGroups } from "./cell-groups.ts";
import { placedTaps } from "./exchanged-positions.ts";
import { faintDepartures } from "./faint-departures.ts";
import type { HeardTap } from "./hear-taps.ts";
import { phaseDepartures } from "./phase-departures.ts";
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

export function tapMap(build: Build, heard: readonly HeardTap[], input?: TapInput): TapMap {
  const { foretold, departures } = placedTaps(build, heard, input);
  const cells = tapCells(heard, foretold);
  const { dead, departures: ofDead } = deadRows(build, cells);
  const sounding = settingGroups(cells).flatMap((setting) => soundDepartures(build, setting, dead));
  return {
    cells,
    departures: [
      ...departures,
      ...ofDead,
      ...sounding,
      ...faintDepartures(build, cells),
      ...phaseDepartures(build, cells),
    ],
  };
}
