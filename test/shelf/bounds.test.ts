import { describe, expect, it } from "vitest";
import { MAX_LINE_CHARS, MAX_VALUES } from "../../src/shelf/bounds.ts";
import { readShelfFile } from "../../src/shelf/file/read-shelf-file.ts";
import { writeShelfFile } from "../../src/shelf/file/shelf-file.ts";
import type { Guard } from "../../src/shelf/guard.ts";
import { duplicateOf, newGuard, newId } from "../../src/shelf/new-guard.ts";
import { withReadings } from "../../src/shelf/readings.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");
const GUARD = newGuard({ name: "n".repeat(MAX_LINE_CHARS), file: "{}" }, AT);

const values = (from: number, count: number) =>
  Array.from({ length: count }, (_, index) => ({ what: `reading ${from + index}`, read: "7.9k" }));
const read = (guard: Guard, from: number, count: number) =>
  withReadings(guard, { id: newId(), date: "2026-03-01", note: "", values: values(from, count) }, AT);

function comesBack(guard: Guard): void {
  expect(readShelfFile(writeShelfFile([guard], AT))).toEqual({ guards: [guard], faults: [] });
}

describe("what the page makes of a guard can be read from a file again", () => {
  it("with a copy of the longest name", () => {
    const copy = duplicateOf(GUARD, AT);
    expect(copy.name).toMatch(/n \(copy\)$/);
    comesBack(duplicateOf(copy, AT));
  });

  it("with more readings of one day than a set holds", () => {
    const guard = read(read(read(GUARD, 0, 600), 600, 600), 1200, 400);
    expect(guard.readings.map((set) => set.values.length).sort()).toEqual([1000, 600]);
    expect(guard.readings.every((set) => set.values.length <= MAX_VALUES)).toBe(true);
    comesBack(guard);
  });

  it("with the same readings kept a second time, which adds nothing", () => {
    const once = read(GUARD, 0, 3);
    expect(read(once, 0, 3)).toBe(once);
    expect(read(once, 1, 3).readings[0]!.values).toEqual(values(0, 4));
  });
});
