import { expect, test } from "vitest";
import { readKept, writeKept } from "../../../src/page/board/kept-board.ts";
import { type Cell, ON_BENCH } from "../../../src/page/cells/cell.ts";
import { markOf } from "../../../src/shelf/line.ts";
import { buildText } from "../../../src/shelf/packed.ts";

test("a board is kept as guards by id and their settings", () => {
  const cell = { key: "a {}", guard: { id: "a", name: "A" }, settings: { lever: 4, tone: 6 } } as unknown as Cell;
  expect(readKept(writeKept([cell]))).toEqual([{ guard: "a", settings: { lever: 4, tone: 6 } }]);
});

test("one of a guard that is on no shelf is kept with the mark of its build file", () => {
  const source = { presolder: 1, parts: {}, wires: [] };
  const guard = { id: ON_BENCH, name: "A", reading: { source } };
  const cell = { key: "bench {}", guard, settings: {} } as unknown as Cell;
  const mark = markOf(buildText(source));
  expect(readKept(writeKept([cell]))).toEqual([{ guard: ON_BENCH, settings: {}, mark }]);
});

test.each([null, "", "[", "{}", "null", "[1,null]", '[{"guard":1,"settings":{}}]', '[{"guard":"a","settings":[]}]'])(
  "%o is an empty board",
  (text) => expect(readKept(text)).toEqual([]),
);
