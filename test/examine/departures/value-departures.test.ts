import { expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build, PartOf } from "../../../src/build-file/schema.ts";
import { valueDepartures } from "../../../src/examine/departures/value-departures.ts";
import { Point, Unknowns } from "../../../src/examine/model/point.ts";
import { unknownsOf } from "../../../src/examine/model/unknowns.ts";
import { USUAL_RIG } from "../../../src/examine/plan/plan.ts";
import { trialGuards } from "../trial-guards.ts";

const guard = trialGuards.find(({ name }) => name === "one P90")!.build;
const [capName, cap] = Object.entries(guard.parts).find(([, { kind }]) => kind === "cap")!;
const { tolerance: _, ...plain } = cap as PartOf<"cap">;
/** From a fifth under to four fifths over. */
const withCap = (own: Partial<PartOf<"cap">>) =>
  readBuild({ ...guard, parts: { ...guard.parts, [capName]: { ...plain, ...own, dielectric: "ceramic-y5v" } } });
const build = withCap({});

const isNamed = (part: string, factor: number) =>
  valueDepartures(build)
    .find(({ freed }) => freed.length === 1 && freed[0]!.part === part)!
    .faults([factor]).length > 0;

it.each([
  ["volume", 0.2, 0.2],
  [capName, 0.2, 0.8],
])("names another value where it is out of tolerance, down as up: %s", (part, under, over) => {
  expect(
    [1 - under + 0.005, 1 + over - 0.005, 1 - under - 0.04, 1 + over + 0.08].map((each) => isNamed(part, each)),
  ).toEqual([false, false, true, true]);
});

it("believes a part in the middle of its tolerance until something is heard of it", () => {
  const slotsOf = (each: Build, part: string) =>
    new Point(new Unknowns(unknownsOf(each, []), USUAL_RIG)).slotsOf(each, part, 5).values;
  const middle = withCap({ capacitance: 1.3 * plain.capacitance, tolerance: 0.1 });
  for (const [slot, value] of slotsOf(middle, capName).entries())
    expect(slotsOf(build, capName)[slot]! / value).toBeCloseTo(1, 9);
  expect(slotsOf(build, "volume").reduce((sum, each) => sum + each, 0)).toBeCloseTo(500e3, 3);
});
