import { expect, test } from "vitest";
import { readKept, writeKept } from "../../../src/page/board/kept-board.ts";
import type { Cell } from "../../../src/page/cells/cell.ts";

test("a board is kept as guards by id and their settings", () => {
  const cell = { key: "a {}", guard: { id: "a", name: "A" }, settings: { lever: 4, tone: 6 } } as unknown as Cell;
  expect(readKept(writeKept([cell]))).toEqual([{ guard: "a", settings: { lever: 4, tone: 6 } }]);
});

test.each([null, "", "[", "{}", "null", "[1,null]", '[{"guard":1,"settings":{}}]', '[{"guard":"a","settings":[]}]'])(
  "%o is an empty board",
  (text) => expect(readKept(text)).toEqual([]),
);
