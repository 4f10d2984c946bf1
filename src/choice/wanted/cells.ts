import type { Build } from "../../build-file/schema.ts";
import { type Controls, type Settings, withControl } from "../../build-file/settings.ts";
import type { SettingDescription } from "../../response/labels/description.ts";
import { SettingDescriber } from "../../response/labels/setting-describer.ts";
import type { Cell } from "./measured.ts";
import type { Where, Wish } from "./wish.ts";

function togetherIn({ relation, phase, pickups }: SettingDescription): number {
  if (relation === "alone") return pickups.length;
  return relation === "parallel" && phase === "in phase" ? pickups.length : 0;
}

/** Every position of the main switch, then each with one lesser switch moved. */
function settingsOf(controls: Controls): { main: Settings[]; lesser: Settings[] } {
  const { main: lever, atRest } = controls;
  const main = lever
    ? lever.table.positions.map((_, index) => withControl(controls, atRest, lever.name, index + 1))
    : [atRest];
  const lesser = controls.switches
    .filter((control) => control !== lever)
    .flatMap(({ name, table }) =>
      table.positions
        .slice(1)
        .flatMap((_, index) => main.map((settings) => withControl(controls, settings, name, index + 2))),
    );
  return { main, lesser };
}

/** The settings of a wiring that wishes may mean; dials at 10. */
export class Cells {
  readonly main: readonly Settings[];
  readonly #cells: readonly Cell[];
  readonly #describer: SettingDescriber;

  /** @param wishes of which some may need to know what sounds in a setting, which takes longest to find out */
  constructor(build: Build, controls: Controls, wishes: readonly Wish[]) {
    this.#describer = new SettingDescriber(build);
    const { main, lesser } = settingsOf(controls);
    this.main = main;
    const asksTogether = wishes.some(({ asks }) =>
      asks.some(({ targets }) => targets.some(({ figure }) => figure === "together")),
    );
    const needsLesser = wishes.some(({ where }) => where.kind === "pickups" || where.kind === "anywhere");
    this.#cells = [...main, ...(needsLesser ? lesser : [])].map((settings) => ({
      settings,
      together: asksTogether ? togetherIn(this.#describer.describe(settings)) : 0,
    }));
  }

  /** What sounds there, in words. */
  label({ settings }: Cell): string {
    return this.#describer.describe(settings).label;
  }

  #sounds(cell: Cell, wanted: readonly string[]): boolean {
    const { pickups } = this.#describer.describe(cell.settings);
    return pickups.length === wanted.length && pickups.every(({ pickup }) => wanted.includes(pickup));
  }

  for(where: Where): readonly Cell[] {
    switch (where.kind) {
      case "position":
        return this.#cells.slice(where.position - 1, Math.min(where.position, this.main.length));
      case "pickups":
        return this.#cells.filter((cell) => this.#sounds(cell, where.pickups));
      case "everywhere":
        return this.#cells.slice(0, this.main.length);
      case "anywhere":
        return this.#cells;
    }
  }
}
