import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readShelfFile, ShelfFileError } from "../../src/shelf/file/read-shelf-file.ts";
import { writeShelfFile } from "../../src/shelf/file/shelf-file.ts";
import type { Guard } from "../../src/shelf/guard.ts";
import { newGuard } from "../../src/shelf/new-guard.ts";
import { anyDrawer } from "./any-drawer.ts";
import { anyShelf } from "./any-guard.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");
const guardNamed = (name: string): Guard => newGuard({ name, file: `{"presolder":1,"title":"${name}"}` }, AT);
const THREE = ["Guard A", "Guard B", "Guard C"].map(guardNamed);
const FILE = writeShelfFile(THREE, AT);

describe("a shelf file", () => {
  it("brings back every guard, and saved again it is the same file byte for byte", () => {
    fc.assert(
      fc.property(anyShelf, (guards) => {
        const text = writeShelfFile(guards, AT);
        // As bytes, since that is what is on the disk.
        const bytes = new TextEncoder().encode(text);
        const read = readShelfFile(new TextDecoder().decode(bytes));
        expect(read).toEqual({ guards, faults: [] });
        expect(writeShelfFile(read.guards, AT)).toBe(text);
        expect(read.guards.map(({ file }) => file)).toEqual(guards.map(({ file }) => file));
      }),
    );
  });

  it("is the same whatever order a guard's fields came in", () => {
    const reversed = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(reversed);
      if (typeof value !== "object" || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .map(([key, each]) => [key, reversed(each)] as const)
          .reverse(),
      );
    };
    fc.assert(
      fc.property(anyShelf, (guards) => {
        expect(writeShelfFile(reversed(guards) as Guard[], AT)).toBe(writeShelfFile(guards, AT));
      }),
    );
  });

  it("carries the drawer with the guards, and saved again it is the same file byte for byte", () => {
    fc.assert(
      fc.property(anyShelf, anyDrawer, (guards, drawer) => {
        const text = writeShelfFile(guards, AT, drawer);
        const read = readShelfFile(new TextDecoder().decode(new TextEncoder().encode(text)));
        expect(read).toEqual({ guards, faults: [], drawer });
        expect(writeShelfFile(read.guards, AT, read.drawer)).toBe(text);
      }),
    );
  });

  it.each([
    [
      "an unknown field",
      { colour: "red" },
      "colour",
      "is not known; expected only currency, items, kits, wires, counted",
    ],
    ["no list", { items: {} }, "items", "is an object; expected a list"],
    [
      "an entry without id",
      { kits: [{ name: "kit" }] },
      "kits.0.id",
      "is missing; expected up to 60 letters, digits and hyphens",
    ],
    [
      "one id twice",
      { wires: [{ id: "a" }, { id: "a" }] },
      "wires.1.id",
      "is that of an earlier entry, a; expected another",
    ],
    ["a guard counted as text", { counted: { x: "yes" } }, "counted.x", 'is "yes"; expected true or false'],
    ["too many kits", { kits: Array.from({ length: 21 }, () => ({})) }, "kits", "has 21 entries; expected at most 20"],
  ])("whose drawer has %s keeps its guards, and says what is wrong with it", (_, wrong, path, message) => {
    const drawer = { currency: "", items: [], kits: [], wires: [], counted: {}, ...wrong };
    const text = JSON.stringify({ ...JSON.parse(FILE), drawer });
    expect(readShelfFile(text)).toEqual({ guards: THREE, faults: [], drawerFault: { path, message } });
  });

  it("that is damaged in a guard's line keeps the drawer, and damaged in the drawer's keeps every guard", () => {
    const [drawer] = fc.sample(anyDrawer, { numRuns: 1, seed: 1 });
    const text = writeShelfFile(THREE, AT, drawer);
    const damaged = readShelfFile(text.replace('"name":"Guard B"', '"name":Guard B"'));
    expect(damaged).toMatchObject({ guards: [THREE[0], THREE[2]], faults: [{ entry: "guard 2" }], drawer });
    const cut = readShelfFile(text.slice(0, -10));
    expect(cut).toMatchObject({
      guards: THREE,
      faults: [],
      drawerFault: { message: expect.stringContaining("breaks off") },
    });
  });

  it("is JSON with a version, a line a guard", () => {
    expect(JSON.parse(FILE)).toMatchObject({ presolderShelf: 1, saved: AT.toISOString(), guards: THREE });
    expect(FILE.split("\n")).toHaveLength(THREE.length + 3);
  });

  it.each([
    [
      "the state",
      { state: "lost" },
      "state",
      'is "lost"; expected one of "wanted", "wired", "in the guitar", "retired"',
    ],
    ["the day", { made: "2026-04-31" }, "made", 'is "2026-04-31"; expected a day, YYYY-MM-DD'],
    ["the name", { name: 7 }, "name", "is 7; expected text"],
    ["the id", { id: "B" }, "id", 'is "B"; expected a UUID in small letters'],
    ["the build file", { file: undefined }, "file", "is missing; expected text"],
    [
      "a reading",
      { readings: [{ id: THREE[0]!.id, date: "2026-01-01", note: "", values: {} }] },
      "readings.0.values",
      "is an object; expected a list",
    ],
    [
      "an earlier moment",
      { history: [{ at: "yesterday", by: "change", was: {} }] },
      "history.0.at",
      'is "yesterday"; expected a moment such as 2026-03-01T18:30:00.000Z',
    ],
    [
      "a field nobody knows",
      { colour: "green" },
      "colour",
      "is not known; expected only id, name, guitar, state, made, notes, file, readings, changed, history",
    ],
  ])(
    "with %s of one guard wrong names guard, field and what was expected, and keeps the others",
    (_, wrong, path, message) => {
      const text = JSON.stringify({ presolderShelf: 1, guards: [THREE[0], { ...THREE[1], ...wrong }, THREE[2]] });
      const { guards, faults } = readShelfFile(text);
      expect(guards).toEqual([THREE[0], THREE[2]]);
      const entry = "name" in wrong ? "guard 2" : "guard 2, “Guard B”";
      expect(faults).toEqual([{ entry, path, message }]);
    },
  );

  it("with the same guard twice keeps the first and says so", () => {
    const { guards, faults } = readShelfFile(writeShelfFile([THREE[0]!, { ...THREE[0]!, name: "again" }], AT));
    expect(guards).toEqual([THREE[0]]);
    expect(faults[0]).toMatchObject({ entry: "guard 2, “again”", path: "id" });
  });

  it("that is cut short anywhere brings back every guard whose line is whole", () => {
    const lines = FILE.split("\n").slice(1, 1 + THREE.length);
    const ends = lines.map((line) => FILE.indexOf(line) + line.replace(/,$/, "").length);
    fc.assert(
      fc.property(fc.integer({ min: ends[0]!, max: FILE.length - 1 }), (length) => {
        const whole = ends.filter((end) => end <= length).length;
        const { guards, faults } = readShelfFile(FILE.slice(0, length));
        expect(guards).toEqual(THREE.slice(0, whole));
        expect(faults.length).toBeLessThanOrEqual(1);
        if (faults[0])
          expect(faults[0]).toMatchObject({
            entry: `guard ${whole + 1}`,
            message: expect.stringContaining("expected"),
          });
      }),
    );
  });

  it("with a damaged line names it by its number and keeps the others", () => {
    const damaged = FILE.replace('"name":"Guard B"', '"name":Guard B"');
    const { guards, faults } = readShelfFile(damaged);
    expect(guards).toEqual([THREE[0], THREE[2]]);
    expect(faults).toEqual([
      {
        entry: "guard 2",
        path: "",
        message: "breaks off or has a wrong character; expected a whole JSON object on its line",
      },
    ]);
  });

  it.each([
    ["text", "hello"],
    ["nothing", ""],
    ["a build file", '{"presolder":1,"parts":{},"wires":[]}'],
    ["a list", "[1,2]"],
    ["null", "null"],
    ["a broken build file", '{"presolder":1,"parts":'],
  ])("is told from %s", (_, text) => {
    expect(() => readShelfFile(text)).toThrow(/no shelf file.*expected JSON that begins with/);
  });

  it("of a later version, without guards, or cut within its head says so", () => {
    expect(() => readShelfFile('{"presolderShelf":2,"guards":[]}')).toThrow(/version 2.*expected 1/);
    expect(() => readShelfFile('{"presolderShelf":1}')).toThrow(/"guards" is missing/);
    expect(() => readShelfFile('{"presolderShelf":1,"sav')).toThrow(ShelfFileError);
  });
});
