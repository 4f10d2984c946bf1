import type { Build } from "../../build-file/schema.ts";
import { settingGroups } from "./cell-groups.ts";
import { exchangedSettings } from "./exchanged-settings.ts";
import { phaseDepartures } from "./phase-departures.ts";
import { deadRows, soundDepartures } from "./sound-departures.ts";
import type { TapCell } from "./tap-cells.ts";
import type { TapDeparture } from "./tap-departure.ts";

/** What a guard as tapped has otherwise than as drawn, the most that one cause explains first. */
export function tapDepartures(build: Build, cells: readonly TapCell[]): TapDeparture[] {
  const settings = settingGroups(cells);
  const exchanged = exchangedSettings(build, settings);
  if (exchanged) {
    const unmoved = cells.filter((cell) => !exchanged.cells.includes(cell));
    return [exchanged.departure, ...deadRows(build, unmoved).departures, ...phaseDepartures(build, cells)];
  }
  const { dead, departures } = deadRows(build, cells);
  const sounding = settings.flatMap((setting) => soundDepartures(build, setting, dead));
  return [...departures, ...sounding, ...phaseDepartures(build, cells)];
}
