import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { PLAN_PRESETS } from "../../src/build-file/plans/presets.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { smallTextBox } from "../../src/page/drawing/bodies/text-boxes.ts";
import { type LaidGuard, layGuard } from "../../src/page/drawing/laid-guard.ts";
import type { Point } from "../../src/page/drawing/point.ts";
import { LUG_RADIUS, overlap, reachInto } from "../../src/page/drawing/routes/labels.ts";
import { freeCurve } from "../../src/page/drawing/wire-curves.ts";
import { casesOf, thoroughly } from "../effort.ts";

const GUARDS: readonly (readonly [string, Build])[] = [
  ...PLAN_PRESETS.map(({ id, plan }) => [id, readBuild({ presolder: 1, plan })] as const),
  ...readdirSync("scenarios").map(
    (file) => [file, readBuild(JSON.parse(readFileSync(`scenarios/${file}`, "utf8")).build)] as const,
  ),
];
const CASES = casesOf(
  GUARDS.flatMap(([name, build]) => (["back", "front"] as const).map((side) => ({ name, build, side }))),
  40,
);
/** Half of the widest wire. */
const HALF_WIRE = 2.5;

interface Line {
  readonly ends: readonly string[];
  readonly points: readonly Point[];
}

const SAMPLES = 150;
const sampled = (at: (t: number) => Point) => Array.from({ length: SAMPLES + 1 }, (_, step) => at(step / SAMPLES));

function linesOf(build: Build, laid: LaidGuard): Line[] {
  return build.wires.map(({ from, to }, index) => ({
    ends: [laid.find(from)!.name, laid.find(to)!.name],
    points: sampled(laid.routes[index]!.at),
  }));
}

const turn = (a: Point, b: Point, c: Point) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
const cross = (a: Point, b: Point, c: Point, d: Point) =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

function crossings(lines: readonly (readonly Point[])[]): number {
  let count = 0;
  for (const [index, one] of lines.entries())
    for (const two of lines.slice(index + 1))
      for (let i = 1; i < one.length; i++)
        for (let j = 1; j < two.length; j++) if (cross(one[i - 1]!, one[i]!, two[j - 1]!, two[j]!)) count += 1;
  return count;
}

describe("the wires of the drawing", () => {
  it.each(CASES)("touch no lug that is not theirs: $name from the $side", ({ build, side }) => {
    const laid = layGuard(build, side);
    const touched = linesOf(build, laid).flatMap(({ ends, points }) =>
      [...laid.lugs.values()]
        .filter(({ name }) => !ends.includes(name))
        .filter((lug) => points.some(({ x, y }) => Math.hypot(x - lug.x, y - lug.y) < LUG_RADIUS + HALF_WIRE))
        .map(({ name }) => `${ends.join(" — ")} over ${name}`),
    );
    expect(touched).toEqual([]);
  });

  it.each(CASES)("begin and end at their lugs: $name from the $side", ({ build, side }) => {
    const laid = layGuard(build, side);
    for (const { ends, points } of linesOf(build, laid))
      for (const [lug, at] of [
        [laid.lugs.get(ends[0]!)!, points[0]!],
        [laid.lugs.get(ends[1]!)!, points.at(-1)!],
      ] as const)
        expect(Math.hypot(lug.x - at.x, lug.y - at.y)).toBeLessThan(0.1);
  });

  thoroughly("cross each other far less than wires that run as they please", () => {
    let [routed, free] = [0, 0];
    for (const [, build] of GUARDS) {
      const laid = layGuard(build, "back");
      routed += crossings(linesOf(build, laid).map(({ points }) => points.filter((_, index) => index % 3 === 0)));
      free += crossings(
        build.wires.map(({ from, to }) =>
          sampled(freeCurve(laid.find(from)!, laid.find(to)!).at).filter((_, index) => index % 3 === 0),
        ),
      );
    }
    expect(routed).toBeLessThan(0.75 * free);
  });

  it("stay where they are as long as the guard does", () => {
    const [, build] = GUARDS[0]!;
    expect(layGuard(build, "back")).toBe(layGuard(build, "back"));
    expect(layGuard(structuredClone(build), "back").routes.map(({ d }) => d)).toEqual(
      layGuard(build, "back").routes.map(({ d }) => d),
    );
  });
});

describe("the names of lugs", () => {
  it.each(CASES)("lie on no wire, no lug, no other text and not on each other: $name from the $side", (each) => {
    const laid = layGuard(each.build, each.side);
    const lines = linesOf(each.build, laid);
    const lugs = [...laid.lugs.values()];
    const boxes = lugs.flatMap(({ name, label }) => {
      const at = laid.labels.get(name);
      return at ? [{ name, box: smallTextBox(label, at) }] : [];
    });
    const under = boxes.flatMap(({ name, box }, index) => [
      ...lines
        .filter(({ points }) => points.some((at) => reachInto(box, at, 1) > 0))
        .map(({ ends }) => ends.join(" — ")),
      ...lugs.filter((lug) => reachInto(box, lug, LUG_RADIUS) > 0.5).map((lug) => `${name} on ${lug.name}`),
      ...laid.texts.filter((text) => overlap(box, text) > 1).map(() => `${name} on a text`),
      ...boxes.slice(index + 1).flatMap((other) => (overlap(box, other.box) > 1 ? [`${name} on ${other.name}`] : [])),
    ]);
    expect(under).toEqual([]);
    // A pot's back alone may go without its name.
    expect(lugs.filter(({ name, label }) => label !== "" && label !== "case" && !laid.labels.has(name))).toEqual([]);
  });

  it.each(CASES)("leave the other texts free of wires too: $name from the $side", ({ build, side }) => {
    const laid = layGuard(build, side);
    const crossed = linesOf(build, laid).filter(({ points }) =>
      laid.texts.some((text) => points.some((at) => reachInto(text, at, 0.5) > 0)),
    );
    expect(crossed.map(({ ends }) => ends.join(" — "))).toEqual([]);
  });
});
