import type { Build } from "../../build-file/schema.ts";
import { listed } from "../../english.ts";
import { rowKey } from "./cell-groups.ts";
import type { TapCell } from "./tap-cells.ts";
import type { TapDeparture } from "./tap-departure.ts";
import { settingWords } from "./tap-words.ts";

type Setting = readonly TapCell[];

/** Whether a setting sounds as another is drawn, in every row that both were tapped in. */
function playsAs(setting: Setting, drawn: Setting): boolean {
  return setting.every((cell) => {
    const other = drawn.find((each) => rowKey(each) === rowKey(cell));
    return other === undefined || cell.sounds === undefined || cell.sounds === other.isExpected;
  });
}

const pattern = (setting: Setting) => setting.map((cell) => `${rowKey(cell)} ${cell.isExpected}`).join();

/** For each setting the one that it plays as, itself where it can; undefined where one plays as none, or two as the same. */
function permutation(settings: readonly Setting[]): number[] | undefined {
  const plays = settings.map((setting, i) =>
    playsAs(setting, setting) ? i : settings.findIndex((drawn) => playsAs(setting, drawn)),
  );
  const moved = plays.filter((to, i) => to !== i);
  const isWhole = moved.every((to) => to >= 0) && new Set(plays).size === plays.length;
  return moved.length > 1 && isWhole ? plays : undefined;
}

/** The settings that have changed places among themselves, where that alone accounts for what sounds where; and the cells of those. */
export function exchangedSettings(
  build: Build,
  settings: readonly Setting[],
): { readonly departure: TapDeparture; readonly cells: readonly TapCell[] } | undefined {
  // Settings that are drawn alike cannot be told apart, and stay where they are.
  if (new Set(settings.map(pattern)).size < 2) return undefined;
  const plays = permutation(settings);
  if (!plays) return undefined;
  const called = (index: number) => settingWords(build, settings[index]![0]!.heard.step.settings);
  const moved = plays.flatMap((to, i) => (to === i ? [] : [`${called(i)} plays what ${called(to)} should`]));
  return {
    departure: { kind: "exchanged", message: `Positions are exchanged: ${listed(moved)}.` },
    cells: settings.filter((_, i) => plays[i] !== i).flat(),
  };
}
