import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { connectionsOf } from "../../../src/build-file/connections.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { rewire } from "../../../src/build-file/rewire/rewire.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { casesOf } from "../../effort.ts";
import { BenchTop, netsOf } from "./bench-top.ts";

const GUARDS: readonly (readonly [name: string, build: Build])[] = [
  ...PLAN_PRESETS.map(({ id, plan }) => [id, readBuild({ presolder: 1, plan })] as const),
  ...readdirSync("scenarios")
    .filter((file) => file.endsWith(".json"))
    .map((file) => [file, readBuild(JSON.parse(readFileSync(`scenarios/${file}`, "utf8")).build)] as const),
];
const PAIRS = GUARDS.flatMap(([nameA, from]) =>
  GUARDS.map(([nameB, to]) => ({ title: `${nameA} → ${nameB}`, from, to })),
);

test("steps followed one by one lead from any guard to the nets of any other, and home again to every joint", () => {
  for (const { title, from, to } of casesOf(PAIRS, 150, 600)) {
    const rewiring = rewire(from, to);
    const { steps, home, result } = rewiring;
    const bench = new BenchTop(from, rewiring);
    const first = bench.joins();
    bench.do(steps, "open");
    expect(bench.nets(), title).toEqual(netsOf(to));
    expect(bench.dangling(), title).toEqual([]);
    expect(netsOf(result), title).toEqual(netsOf(to));
    expect(home.length, title).toBe(steps.length);
    bench.do(home, "make");
    expect(bench.joins(), title).toEqual(first);
  }
});

test("a guard needs no step to become itself, and stays itself", () => {
  for (const [name, build] of GUARDS) {
    const { steps, home, kept, parts, result } = rewire(build, build);
    expect({ steps, home, in: parts.comeIn, out: parts.goOut }, name).toEqual({ steps: [], home: [], in: [], out: [] });
    expect(kept).toHaveLength(build.wires.length);
    expect(result, name).toEqual({ ...build, wires: build.wires.map((wire) => expect.objectContaining(wire)) });
  }
});

test("what was reached needs no further step, whatever the routes", () => {
  for (const { title, from, to } of casesOf(PAIRS, 60, 300)) {
    const { result } = rewire(from, to);
    expect(rewire(result, to).steps, title).toEqual([]);
    expect(readBuild(JSON.parse(JSON.stringify(result))), title).toEqual(result);
  }
});

test("at a lug, all that is opened is opened before anything is made", () => {
  for (const { title, from, to } of casesOf(PAIRS, 60, 300)) {
    const { steps, parts } = rewire(from, to);
    const wantedName = new Map(parts.stay.map((part) => [part.from, part.to]));
    const made = new Set<string>();
    for (const step of steps) {
      const [part = "", ...local] = step.at.split(".");
      if (step.do === "make") made.add(step.at);
      else if (wantedName.has(part)) expect(made, title).not.toContain([wantedName.get(part), ...local].join("."));
    }
  }
});

test("parts on which nothing is soldered yet are wired by the routes of the guard as wanted, but where others take less", () => {
  const routeOf = ({ from, to }: { from: string; to: string }) => [from, to].sort().join("–");
  let byRoute = 0;
  for (const [name, build] of GUARDS) {
    const { result, steps } = rewire({ ...build, wires: [] }, build);
    const ownJoints = connectionsOf(build).reduce((sum, { grownFrom }) => sum + (grownFrom.length === 0 ? 2 : 1), 0);
    expect(steps.length, name).toBeLessThanOrEqual(ownJoints);
    if (steps.length < ownJoints) continue;
    byRoute++;
    expect(result.wires.map(routeOf).sort(), name).toEqual(build.wires.map(routeOf).sort());
  }
  expect(byRoute).toBeGreaterThan(GUARDS.length / 2);
});
