import { expect, test } from "vitest";
import {
  followed,
  heardAt,
  lugsOf,
  NAMED_TABLES,
  onBench,
  questionOf,
  rotaryTable,
  type TradeTable,
} from "./switch-on-bench.ts";

function ordersOf<T>(items: readonly T[]): T[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item, index) =>
    ordersOf(items.filter((_, other) => other !== index)).map((rest) => [item, ...rest]),
  );
}

const table = (name: string) => NAMED_TABLES.find(([each]) => each === name)![1];

/** What every pair of lugs beeps like, for each different way the lugs of some switches may lie. */
function allTables(
  switches: readonly (readonly [string, TradeTable])[],
): { key: string; order: string[]; name: string; table: TradeTable }[] {
  const all = switches.flatMap(([name, each]) =>
    ordersOf(lugsOf(name, each)).map((order) => {
      const pairs = order.flatMap((a, index) => order.slice(index + 1).map((b) => heardAt(each, a, b).join("+")));
      return { key: pairs.join(), order, name, table: each };
    }),
  );
  return all.filter(({ key }, index) => all.findIndex((other) => other.key === key) === index);
}

/** The fewest touches, on average over all tables alike, that any way to choose them could do with: all ways are gone through. */
function fewest(keys: readonly string[], known = new Map<string, number>()): number {
  if (keys.length === 1) return 0;
  const name = keys.join("|");
  const before = known.get(name);
  if (before !== undefined) return before;
  const pairs = keys[0]!.split(",").length;
  const costs = Array.from({ length: pairs }, (_, pair) => {
    const groups = new Map<string, string[]>();
    for (const key of keys) {
      const heard = key.split(",")[pair]!;
      groups.set(heard, [...(groups.get(heard) ?? []), key]);
    }
    if (groups.size === 1) return Number.POSITIVE_INFINITY;
    return [...groups.values()].reduce((sum, group) => sum + (group.length / keys.length) * fewest(group, known), 1);
  });
  const least = Math.min(...costs);
  known.set(name, least);
  return least;
}

test.each([
  ["three lugs, two positions", [["spdt", table("spdt")]]],
  [
    "four lugs, three positions",
    [
      ["toggle-3", table("toggle-3")],
      ["rotary", rotaryTable(1, 3)],
    ],
  ],
] as const)(
  "over all switches of %s it needs at most a tenth more touches than the best of all ways",
  (_, switches) => {
    const all = allTables(switches as never);
    const counts = all.map(
      ({ order, table: each }) => followed(onBench(each, order), questionOf(onBench(each, order))).length,
    );
    const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
    expect(mean).toBeGreaterThanOrEqual(fewest(all.map(({ key }) => key)) - 1e-9);
    expect(mean).toBeLessThanOrEqual(1.1 * fewest(all.map(({ key }) => key)));
  },
);
