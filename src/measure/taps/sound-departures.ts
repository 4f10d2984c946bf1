import type { Build } from "../../build-file/schema.ts";
import { listed } from "../../english.ts";
import { grouped, rowKey } from "./cell-groups.ts";
import type { TapCell } from "./tap-cells.ts";
import type { TapDeparture } from "./tap-departure.ts";
import { pickupCalled, rowCalled, settingWords } from "./tap-words.ts";

const isMissing = (cell: TapCell) => cell.isExpected && cell.sounds === false;

/** Rows that should sound somewhere and do so nowhere; a whole pickup's in one. */
export function deadRows(build: Build, cells: readonly TapCell[]): { dead: Set<string>; departures: TapDeparture[] } {
  const rows = grouped(cells, rowKey);
  const isDead = (row: readonly TapCell[]) => row.some(isMissing) && row.every(({ sounds }) => sounds === false);
  const dead = rows.filter(isDead).map((row) => row[0]!);
  const departures = grouped(dead, ({ heard }) => heard.step.pickup).map((found): TapDeparture => {
    const { pickup, coil } = found[0]!.heard.step;
    const whole = found.length === rows.filter(([row]) => row!.heard.step.pickup === pickup).length;
    const called = whole ? pickupCalled(build, pickup) : rowCalled(build, { pickup, coil });
    return {
      kind: "dead",
      pickup,
      ...(whole ? {} : { coil }),
      message: `The ${called} is silent in every position.`,
    };
  });
  return { dead: new Set(dead.map(rowKey)), departures };
}

/** Rows that a setting lets through and should not, or the other way about. @param dead rows that are told elsewhere */
export function soundDepartures(build: Build, setting: readonly TapCell[], dead: ReadonlySet<string>): TapDeparture[] {
  const { settings } = setting[0]!.heard.step;
  const where = settingWords(build, settings);
  const expected = setting.filter(({ isExpected }) => isExpected);
  const alive = expected.filter((cell) => !dead.has(rowKey(cell)));
  if (alive.length > 0 && setting.every(({ sounds }) => sounds === false)) {
    const message = `In ${where} nothing sounds; the ${listed(alive.map(({ heard }) => rowCalled(build, heard.step)))} should.`;
    return [{ kind: "nothing", settings, message }];
  }
  return setting.flatMap((cell): TapDeparture[] => {
    const { pickup, coil } = cell.heard.step;
    const called = rowCalled(build, { pickup, coil });
    if (isMissing(cell) && !dead.has(rowKey(cell)))
      return [
        { kind: "silent", settings, pickup, coil, message: `In ${where} the ${called} is silent, expected to sound.` },
      ];
    if (!cell.isExpected && cell.sounds === true)
      return [
        { kind: "sounds", settings, pickup, coil, message: `In ${where} the ${called} sounds, expected to be silent.` },
      ];
    return [];
  });
}
