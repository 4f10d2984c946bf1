import { describe, expect, test } from "vitest";
import { assign } from "../../src/drawer/assign.ts";
import { Random } from "../random.ts";

/** The least sum over every way to give each row a column of its own. */
function leastSum(costs: readonly Float64Array[], row = 0, used = 0): number {
  if (row === costs.length) return 0;
  let best = Number.POSITIVE_INFINITY;
  for (let column = 0; column < costs[row]!.length; column++) {
    if (used & (1 << column)) continue;
    best = Math.min(best, costs[row]![column]! + leastSum(costs, row + 1, used | (1 << column)));
  }
  return best;
}

describe("rows to columns of their own", () => {
  test("come to the least sum, as every way tried one by one does", () => {
    const source = new Random(7);
    const random = () => source.next();
    for (let trial = 0; trial < 300; trial++) {
      const rows = 1 + Math.floor(random() * 5);
      const columns = rows + Math.floor(random() * 3);
      const costs = Array.from({ length: rows }, () =>
        Float64Array.from({ length: columns }, () => Math.floor(random() * 9)),
      );
      const columnOf = assign(costs);
      expect(new Set(columnOf).size).toBe(rows);
      expect(columnOf.reduce((sum, column, row) => sum + costs[row]![column]!, 0)).toBe(leastSum(costs));
    }
  });

  test("none at all is nothing to do", () => {
    expect(assign([])).toEqual([]);
  });
});
