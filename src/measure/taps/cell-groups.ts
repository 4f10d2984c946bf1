import { settingsKey } from "../../build-file/settings.ts";
import type { HeardTap } from "./hear-taps.ts";

interface Heard {
  readonly heard: Pick<HeardTap, "step">;
}

export const rowKey = ({ heard: { step } }: Heard) => `${step.pickup} ${step.coil}`;

export function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => string): Item[][] {
  const groups = new Map<string, Item[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return [...groups.values()];
}

/** The cells of each setting. */
export const settingGroups = <Cell extends Heard>(cells: readonly Cell[]) =>
  grouped(cells, ({ heard }) => settingsKey(heard.step.settings));
