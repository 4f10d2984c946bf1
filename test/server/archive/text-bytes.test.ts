import fc from "fast-check";
import { expect, test } from "vitest";
import { TextBytes } from "../../../src/server/archive/text-bytes.ts";

const read = (bytes: Uint8Array) => Buffer.from(bytes).toString();
const asJson = (values: readonly number[], places: number) =>
  JSON.stringify(values.map((value) => Math.round(value * 10 ** places) / 10 ** places)).slice(1, -1);
const EDGES = [
  ...[0, -0, 1e-7, -4e-7, 5e-7, 1e-6, -1e-6, 0.1, 0.100001, 9.9999995, 10, 99.9999999, 100, 999.999999, 1000, 1e6],
  ...[-192.8, 360.000001, 1e9 - 1e-6, 1e9, 123_456_789.123456, 999_999_999.999999, 1e15, 1e20, 1e21, 1e300],
  ...[Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
];

test.each([3, 4, 6])("numbers are written to %i places, to the letter as the platform writes them", (places) => {
  const written = (values: readonly number[]) =>
    read(new TextBytes().numbers(Float64Array.from(values), places).whole());
  expect(written(EDGES)).toBe(asJson(EDGES, places));
  const numbers = fc.array(
    fc.oneof(
      fc.double({ min: -400, max: 400 }),
      fc.double(),
      fc.integer().map((count) => count / 10 ** places),
    ),
  );
  fc.assert(
    fc.property(numbers, (values) => {
      expect(written(values)).toBe(asJson(values, places));
    }),
  );
});

test("text and bytes follow each other however long they are", () => {
  const long = "käse — 22 nF ".repeat(9_999);
  const text = new TextBytes().text("a").text(long).bytes(Buffer.from("b")).text("").text("\u{1F3B8}").whole();
  expect(read(text)).toBe(`a${long}b\u{1F3B8}`);
});
