import { expect, test } from "vitest";
import { foundAndWanted } from "../../src/page/rewire/guard-names.ts";
import type { Reading } from "../../src/page/state/reading.ts";

const called = (title?: string) => ({ source: { title } }) as unknown as Reading;

test.each([
  ["HSS", "HSH", "As found: HSS. As wanted: HSH."],
  ["HSS", "HSS", "As found: HSS, the guard kept as B. As wanted: HSS, the guard on the bench."],
  [undefined, "HSS", "As found: the guard kept as B. As wanted: HSS."],
  [undefined, undefined, "As found: the guard kept as B. As wanted: the guard on the bench."],
])("%s and %s: %s", (found, wanted, told) => {
  expect(foundAndWanted(called(found), called(wanted))).toBe(told);
});
