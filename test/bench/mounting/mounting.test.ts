import { describe, expect, it, test } from "vitest";
import { meterReadings } from "../../../src/bench/meter/readings.ts";
import { mountingOf } from "../../../src/bench/mounting/mounting.ts";
import { partsOfKind } from "../../../src/build-file/parts-of-kind.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build, BuildInput } from "../../../src/build-file/schema.ts";
import { presetGuard, withoutPickups } from "../../fixtures/harness.ts";
import { scenarioBuilds } from "../scenario-builds.ts";

const told = (build: Build) => mountingOf(build, meterReadings(build).readings);
const allOf = (build: Build) => {
  const { before, closing } = told(build);
  return [...before, ...closing];
};
const presetBuild = (id: string) => readBuild(presetGuard(id));
const titlesOf = (build: Build) => allOf(build).map(({ title }) => title);
const stepOf = (build: Build, title: string) => allOf(build).find((step) => step.title === title);

const GUARDS = [
  ...PLAN_PRESETS.map(({ id }) => ({ name: id, build: presetBuild(id) })),
  ...scenarioBuilds,
  { name: "a harness", build: readBuild(withoutPickups(presetGuard("singles-three-way"))) },
];

describe.each(GUARDS)("mounting and closing of $name", ({ build }) => {
  it("names only parts of the guard, and says no step twice", () => {
    for (const { parts } of allOf(build)) for (const part of parts) expect(Object.keys(build.parts)).toContain(part);
    const steps = allOf(build).map(({ title, parts }) => `${title}: ${parts.join()}`);
    expect(new Set(steps).size).toBe(steps.length);
  });

  it("says of every pot, switch, jack and pickup how it is fitted", () => {
    const fitted = told(build)
      .before.filter(({ title }) => title !== "Hardware before wire")
      .flatMap(({ parts }) => parts);
    for (const kind of ["pot", "switch", "jack", "pickup"] as const)
      for (const [name] of partsOfKind(build, kind)) expect(fitted).toContain(name);
  });
});

test("files before a pickup is near, fits hardware before wire, and ends with knobs, tip and acceptance", () => {
  const build = presetBuild("hss-push-pull-split");
  const { before, closing } = told(build);
  expect(before.slice(0, 2).map(({ title }) => title)).toEqual([
    "File first, pickups far away",
    "Hardware before wire",
  ]);
  const order = before.map(({ title }) => title);
  expect(order.indexOf("Cover open coils")).toBeLessThan(order.indexOf("Height screws by hand first"));
  expect(closing.slice(-3).map(({ title }) => title)).toEqual(["Knobs", "Switch tip", "Acceptance readings"]);
});

describe("only what the parts call for is said", () => {
  it.each([
    ["Push-pull", "hss-push-pull-split", "singles-three-way"],
    ["Lever switch: two screws", "singles-three-way", "humbuckers-one-volume"],
    ["Toggle", "humbuckers-one-volume", "singles-three-way"],
    ["Bare wire in the cable", "one-humbucker", "one-p90"],
    ["Switch tip", "singles-three-way", "one-humbucker"],
  ])("%s: of %s, not of %s", (title, withIt, without) => {
    expect(titlesOf(presetBuild(withIt))).toContain(title);
    expect(titlesOf(presetBuild(without))).not.toContain(title);
  });

  it("leaves pickups out of a harness, foil and claw out of a guard that has neither", () => {
    const bare = (guard: BuildInput): BuildInput => ({
      ...guard,
      parts: Object.fromEntries(Object.entries(guard.parts).filter(([, { kind }]) => kind !== "terminal")),
      wires: guard.wires.filter((wire) => !JSON.stringify(wire).match(/"(claw|shield)"/)),
    });
    const guard = presetGuard("singles-three-way");
    expect(titlesOf(readBuild(withoutPickups(guard))).filter((title) => /pickup|coil|wax|spring/i.test(title))).toEqual(
      ["File first, pickups far away", "Spring claw"],
    );
    expect(titlesOf(readBuild(guard))).toEqual(expect.arrayContaining(["Spring claw"]));
    expect(titlesOf(readBuild(bare(guard)))).not.toContain("Spring claw");
  });

  it("speaks of the foil where there is one, with every part whose lugs could meet it", () => {
    const plan = { ...PLAN_PRESETS.find(({ id }) => id === "singles-three-way")!.plan };
    const of = (shield: boolean) =>
      stepOf(readBuild({ presolder: 1, plan: { ...plan, shield } }), "No hot lug on the foil");
    expect(of(true)!.parts).toEqual(expect.arrayContaining(["lever", "volume", "jack"]));
    expect(of(false)).toBeUndefined();
  });

  it("covers the coils that lie open, not those under metal", () => {
    const build = presetBuild("two-singles");
    const covered = partsOfKind(build, "pickup").flatMap(([name, { metal }]) => (metal === "cover" ? [name] : []));
    expect(covered.length).toBe(1);
    expect(stepOf(build, "Cover open coils")!.parts).toEqual(
      partsOfKind(build, "pickup")
        .map(([name]) => name)
        .filter((name) => !covered.includes(name)),
    );
  });
});

// Position 1 is the bridge's, by the switches' contact tables; the first throw of each pole is its lug.
it.each([
  ["singles-three-way", "Lever switch: which way round", "lever.A0 and lever.A1"],
  ["humbuckers-one-volume", "Toggle", "toggle.A0 and toggle.A1"],
  ["hss-push-pull-split", "Push-pull", "tone2.s.A0 and tone2.s.A1"],
])("%s: %s tells by the meter what its first position joins", (id, title, joined) => {
  expect(stepOf(presetBuild(id), title)!.text).toContain(joined);
});

it("sets a rotary switch's stop ring to the positions that the build gives it", () => {
  const guard = presetGuard("singles-three-way");
  const rotary = { kind: "switch", type: "rotary", poles: 1, throws: 4 } as const;
  const build = readBuild({ ...guard, parts: { ...guard.parts, rotary } });
  expect(stepOf(build, "Rotary switch")!.text).toMatch(/stop ring to 4 positions.*rotary\.A0 and rotary\.A1/);
});

it("says which coil of a humbucker lies nearer the bridge, by the build's distances", () => {
  const build = presetBuild("humbuckers-one-volume");
  const nearest = partsOfKind(build, "pickup").map(([name, { coils }]) => {
    const [coil] = Object.entries(coils).sort(([, a], [, b]) => a.distance! - b.distance!)[0]!;
    return `the ${coil} coil of the ${name} humbucker`;
  });
  expect(new Set(nearest).size).toBe(2);
  for (const words of nearest) expect(stepOf(build, "Pickups: which way round")!.text).toContain(words);
});

describe("the acceptance readings", () => {
  it.each([
    ["singles-three-way", 3],
    ["hss-push-pull-split", 5],
    ["one-humbucker", 1],
  ])("of %s are the meter table's lines at the jack, one a position: %i", (id, count) => {
    const build = presetBuild(id);
    const table = meterReadings(build).readings;
    const { readings } = stepOf(build, "Acceptance readings")!;
    expect(readings).toHaveLength(count);
    for (const reading of readings!) {
      const line = table.find(({ label }) => label === reading.label)!;
      expect(line).toMatchObject({ ...reading, between: ["jack.tip", "jack.sleeve"] });
      expect(Object.entries(line.settings).filter(([, value]) => value === 0)).toEqual([]);
    }
  });
});
