import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BuildSheet, buildSheet } from "../../../src/bench/sheet/build-sheet.ts";
import { DEFAULT_SHEET_OPTIONS } from "../../../src/bench/sheet/options.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { casesOf, effort } from "../../effort.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { anyPlannedBuild, builds, builtFrom, jointsIn, lugsOf, partition } from "./guards.ts";

const isOfPickup = (build: Build, lug: string) => build.parts[lug.split(".")[0]!]?.kind === "pickup";
const isLoose = (build: Build, lug: string) =>
  ["pickup", "cap", "resistor"].includes(build.parts[lug.split(".")[0]!]!.kind);

function expectSolderable(build: Build, sheet: BuildSheet, maxEnds = 4): void {
  const lugs = lugsOf(build);
  const joints = jointsIn(sheet.sittings);
  expect(partition(builtFrom(build, sheet), lugs)).toBe(partition(build, lugs));
  const leads = joints.flatMap(({ ends }) => ends.flatMap(({ lead }) => lead ?? []));
  expect(new Set(leads).size, `leads soldered twice: ${leads}`).toBe(leads.length);
  for (const { number, ends } of joints) expect(ends.length, `joint ${number}`).toBeLessThanOrEqual(maxEnds);
  for (const { kind, at, ends } of joints) {
    // A loose end is no place to solder to, unless it is a splice of at least two.
    expect(isLoose(build, at)).toBe(kind === "splice");
    if (kind === "splice") expect(ends.length).toBeGreaterThan(1);
  }
  expect(joints.map(({ number }) => number)).toEqual(joints.map((_, index) => index + 1));
}

const sampled = casesOf(builds, 24);

describe("the schedule", () => {
  it.each(sampled)(
    "of $name makes its nets, solders every lead once, and has at most four ends a joint",
    ({ build }) => {
      expectSolderable(build, buildSheet(build));
    },
  );

  it("of any plan does", () => {
    fc.assert(
      fc.property(anyPlannedBuild, (build) => expectSolderable(build, buildSheet(build))),
      { numRuns: effort(20, 250) },
    );
  });

  it("of any plan does with three ends a joint", () => {
    const options = { ...DEFAULT_SHEET_OPTIONS, maxEnds: 3 };
    fc.assert(
      fc.property(anyPlannedBuild, (build) => expectSolderable(build, buildSheet(build, options), 3)),
      { numRuns: effort(10, 100) },
    );
  });

  it("wires the nets of any wiring whatever, and uses no lead twice", () => {
    const file = threeSingles() as { parts: Record<string, object> };
    const lugs = lugsOf(readBuild(file));
    const lug = fc.constantFrom(...lugs);
    const pair = fc.tuple(lug, lug).filter(([a, b]) => a !== b);
    fc.assert(
      fc.property(fc.array(pair, { maxLength: 30 }), (wires) => {
        const build = readBuild({ ...file, wires });
        const sheet = buildSheet(build, DEFAULT_SHEET_OPTIONS, { readings: [], audit: [] });
        expect(partition(builtFrom(build, sheet), lugs)).toBe(partition(build, lugs));
        const leads = jointsIn(sheet.sittings).flatMap(({ ends }) => ends.flatMap(({ lead }) => lead ?? []));
        expect(new Set(leads).size).toBe(leads.length);
      }),
      { numRuns: effort(30, 250) },
    );
  });

  it.each(sampled)(
    "of $name heats every case once before the pickups and once after at most, every lug once a sitting",
    ({ build }) => {
      const { sittings } = buildSheet(build);
      for (const { stages } of sittings) {
        const places = stages.flatMap(({ joints }) => joints.map(({ at }) => at));
        expect(new Set(places).size).toBe(places.length);
      }
      for (const { at, heat } of jointsIn(sittings.slice(1)))
        expect(heat.again).toBe(jointsIn(sittings.slice(0, 1)).some((joint) => joint.at === at));
    },
  );

  it.each(sampled)("of $name has no pickup in the harness, and every lead of one afterwards", ({ build }) => {
    const { sittings } = buildSheet(build);
    if (sittings.length === 1) return;
    const ofPickups = (index: number) =>
      jointsIn(sittings.slice(index, index + 1)).flatMap(({ at, ends }) =>
        [at, ...ends.map(({ from }) => from)].filter((lug) => isOfPickup(build, lug)),
      );
    expect(ofPickups(0)).toEqual([]);
    for (const { ends } of jointsIn(sittings.slice(1)))
      for (const { means, from } of ends) if (means === "lead") expect(isOfPickup(build, from)).toBe(true);
  });

  it.each(sampled)("of $name says of every end that hangs which later joint takes it", ({ build }) => {
    const joints = jointsIn(buildSheet(build).sittings);
    for (const { number, waits, text } of joints)
      for (const { wire, lead, at, joint } of waits) {
        const taker = joints.find((each) => each.number === joint)!;
        expect(joint).toBeGreaterThan(number);
        expect(taker.at).toBe(at);
        const piece = taker.ends.find((end) => (wire === undefined ? end.means === "leg" : end.wire === wire));
        expect(piece, `${lead ?? wire} at joint ${joint}`).toBeDefined();
        expect(text).toContain(`joint ${joint} takes it`);
      }
  });

  it("is the same to the byte for the same build", () => {
    for (const { build } of builds)
      expect(JSON.stringify(buildSheet(structuredClone(build)))).toBe(JSON.stringify(buildSheet(build)));
  });
});

const preset = (name: string) => builds.find((each) => each.name === name)!.build;

describe("the harness", () => {
  it.each(sampled.filter(({ build }) => Object.values(build.parts).some(({ kind }) => kind === "pickup")))(
    "of $name shows no fault of its own that the whole guard does not have",
    ({ build }) => {
      const [harness, pickups] = buildSheet(build).sittings;
      const faults = (audit: NonNullable<typeof harness>["audit"]) =>
        audit.filter(({ severity }) => severity === "fault");
      const known = new Set(faults(pickups!.audit).map(({ code }) => code));
      expect(faults(harness!.audit).filter(({ code }) => !known.has(code))).toEqual([]);
      expect(harness!.readings.length).toBeGreaterThan(0);
    },
  );

  it("works from the bottom control up, the wires that leave the guard last, and pickups after it", () => {
    const { sittings } = buildSheet(preset("singles-neck-middle"));
    expect(sittings.map(({ title }) => title)).toEqual(["The harness, without the pickups", "The pickups"]);
    expect(sittings[0]!.stages.map(({ parts }) => parts)).toEqual([
      ["tone2"],
      ["tone1"],
      ["volume"],
      ["lever"],
      ["jack", "claw", "shield"],
    ]);
    expect(sittings[1]!.stages.map(({ title }) => title)).toEqual(["Leads to the lugs", "Leads to the cases"]);
  });

  it("goes by the parts' own places where the build has them", () => {
    const file = threeSingles() as { parts: Record<string, object> };
    const parts = { ...file.parts, volume: { ...file.parts.volume, place: { x: -0.2, y: 0.1 } } };
    expect(buildSheet(readBuild({ ...file, parts })).sittings[0]!.stages[0]!.parts).toEqual(["volume"]);
  });

  it("checks a pot's track before anything shunts it, and the cap's leg", () => {
    const [stage] = buildSheet(preset("singles-neck-middle")).sittings[0]!.stages;
    expect(stage!.checks.find(({ between }) => between?.[0] === "tone2.1")?.text).toMatch(/200 kΩ to 300 kΩ/);
    expect(stage!.checks.map(({ text }) => text).join()).toMatch(/leg at tone2.2 stands clear of every case/);
  });
});

describe("loose ends", () => {
  it("of a split meet on the switch's lug, each soldered there once", () => {
    const joints = jointsIn(buildSheet(preset("hss-push-pull-split")).sittings);
    const [joint, ...others] = joints.filter(({ ends }) =>
      ends.some(({ lead }) => lead === "bridge.screw.start" || lead === "bridge.slug.start"),
    );
    expect(others).toEqual([]);
    expect(joint!.at).toBe("tone2.s.A0");
    expect(joint!.ends.map(({ lead }) => lead).sort()).toEqual(["bridge.screw.start", "bridge.slug.start"]);
  });

  it("that meet each other alone are spliced and sleeved", () => {
    const joints = jointsIn(buildSheet(preset("humbuckers-independent")).sittings);
    const splices = joints.filter(({ kind }) => kind === "splice");
    expect(splices.map(({ ends }) => ends.map(({ lead }) => lead))).toEqual([
      ["neck.slug.start", "neck.screw.start"],
      ["bridge.slug.start", "bridge.screw.start"],
    ]);
    for (const { text } of splices) expect(text).toMatch(/sleeve/);
  });

  it("get a wire of their own for a second destination", () => {
    const file = threeSingles() as { wires: unknown[] };
    const build = readBuild({ ...file, wires: [...file.wires, ["middle.hot", "tone1.3"]] });
    const { pieces, sittings } = buildSheet(build);
    const own = pieces.filter(({ wires, stops }) => wires.length === 0 && stops.includes("lever.A2"));
    expect(own.map(({ stops }) => new Set(stops))).toEqual([new Set(["lever.A2", "tone1.3"])]);
    expect(jointsIn(sittings).filter(({ ends }) => ends.some(({ lead }) => lead === "middle.hot"))).toHaveLength(1);
  });

  it("are spread over the cases, and where they are not where the build has them the sheet says why", () => {
    const sheet = buildSheet(preset("hsh-push-pull-splits"));
    expect(sheet.weighed.moved.length).toBeGreaterThan(0);
    for (const { end, from, to, text } of sheet.weighed.moved) {
      expect(text).toContain(`${end} goes to ${to}`);
      expect(text).toContain(from);
    }
  });
});

describe("a bent lug", () => {
  it("is soldered at its case alone, in the first sitting, and told beforehand", () => {
    const { sittings, preparations } = buildSheet(preset("singles-neck-middle"));
    const joints = jointsIn(sittings.slice(0, 1));
    expect(joints.map(({ at }) => at)).not.toContain("volume.1");
    const taker = joints.find(({ ends }) => ends.some(({ means }) => means === "bent lug"))!;
    expect(taker.at).toBe("volume.case");
    expect(preparations.join(" ")).toContain(`volume.1 (joint ${taker.number})`);
  });
});
