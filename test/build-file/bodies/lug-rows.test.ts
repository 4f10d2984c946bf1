import { describe, expect, it, test } from "vitest";
import { withFittingBody } from "../../../src/build-file/bodies/fitting-body.ts";
import { lugSpots, outlineOf } from "../../../src/build-file/bodies/lug-spots.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { isSamePart } from "../../../src/build-file/rewire/same-part.ts";
import { faultsFrom } from "../refusals.ts";

const guard = (part: object) => ({ presolder: 1, parts: { jack: { kind: "jack" }, it: part }, wires: [] });
const read = (part: object) => readBuild(guard(part)).parts.it!;
const toggle = (lugRows: unknown, rest: object = {}) => ({ kind: "switch", type: "toggle-3", lugRows, ...rest });

const FOUND = [
  [null, "frame", null],
  ["A2", "A1", "A0"],
];

describe("lugs as they were found", () => {
  it("sit in their rows, the first nearest the treble side, within a body that holds them", () => {
    const part = read(toggle(FOUND));
    const spots = lugSpots(part);
    expect([...spots.keys()].sort()).toEqual(["A0", "A1", "A2", "frame"]);
    expect(spots.get("A2")!.x).toBeLessThan(spots.get("A1")!.x);
    expect(spots.get("A1")!.x).toBeLessThan(spots.get("A0")!.x);
    expect(spots.get("frame")!.y).toBeGreaterThan(spots.get("A1")!.y);
    expect(spots.get("frame")!.x).toBe(spots.get("A1")!.x);
    const outline = outlineOf(part);
    if (outline.form !== "box") throw new Error("expected a box");
    for (const { x, y } of spots.values()) {
      expect(Math.abs(x)).toBeLessThan(outline.width / 2);
      expect(Math.abs(y)).toBeLessThan(outline.height / 2);
    }
  });

  it("may be those of a contact table of one's own", () => {
    const part = read({ kind: "switch", positions: [[["x", "y"]], [["y", "z"]]], lugRows: [["z"], ["y"], ["x"]] });
    expect([...lugSpots(part).keys()]).toEqual(["z", "y", "x"]);
  });

  it("tell two switches apart, where both say them", () => {
    const other = [FOUND[0]!, ["A0", "A1", "A2"]];
    expect(isSamePart(read(toggle(FOUND)), read(toggle(other)))).toBe(false);
    expect(isSamePart(read(toggle(FOUND)), read({ kind: "switch", type: "toggle-3" }))).toBe(true);
  });

  it("are dropped where the switch becomes one of other lugs, and kept where it does not", () => {
    expect(withFittingBody(toggle(FOUND, { type: "dpdt" }))).toEqual({ kind: "switch", type: "dpdt" });
    expect(withFittingBody(toggle(FOUND))).toEqual(toggle(FOUND));
  });
});

test.each([
  ["a lug too few", toggle([["A0", "A1", "A2"]]), /the lug "frame" is missing/],
  ["a lug twice", toggle([["A0", "A1", "A1", "A2", "frame"]]), /the lug "A1" stands in it twice/],
  ["a strange lug", toggle([["A0", "A1", "A2", "fram"]]), /no lug "fram"; did you mean "frame"\?/],
  ["no rows", toggle([]), /expected/],
])("rows that are not the switch's lugs are refused by name: %s", (_, part, message) => {
  const [fault, ...others] = faultsFrom(() => readBuild(guard(part)));
  expect(others).toEqual([]);
  expect(fault!.path).toBe("build.parts.it.lugRows");
  expect(fault!.message).toMatch(message);
});

test("a body beside rows of one's own is refused", () => {
  const [fault] = faultsFrom(() => readBuild(guard(toggle(FOUND, { body: "box" }))));
  expect(fault).toMatchObject({ path: "build.parts.it.body", message: expect.stringMatching(/no body "box"/) });
});
