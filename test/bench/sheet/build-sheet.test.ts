import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BuildSheet, buildSheet } from "../../../src/bench/sheet/build-sheet.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { Wiring } from "../../../src/wiring/nets.ts";
import { circuits, onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { scenarioBuilds } from "../scenario-builds.ts";

const builds: readonly { name: string; build: Build }[] = [
  ...scenarioBuilds,
  ...circuits.map(({ name, build }) => ({ name, build: readBuild(build) })),
];

/**
 * The nets that somebody makes who follows the joints alone: what arrives at a joint meets its lugs, and a leg or lead meets
 * the lug that it grows out of.
 */
function netsFromJoints(build: Build, sheet: BuildSheet): Build["wires"] {
  const end = (connection: number) => `connection${connection}`;
  const meets: [string, string][] = [];
  for (const { number, grownFrom } of sheet.connections) for (const lug of grownFrom) meets.push([end(number), lug]);
  for (const { joints } of sheet.stages) {
    for (const { lugs, arrivals } of joints)
      for (const { connection } of arrivals) for (const lug of lugs) meets.push([end(connection), lug]);
  }
  const terminals = Object.fromEntries(
    sheet.connections.map(({ number }) => [end(number), { kind: "terminal" as const }]),
  );
  Object.assign(build.parts, terminals);
  return meets.map(([from, to]) => ({ from, to }));
}

/** For every pair of the original lugs, whether wires join them. */
function partition(build: Build, lugs: readonly string[]): string {
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const nets = lugs.map((lug) => netOfLug[wiring.lugs.indexOf(lug)]!);
  return nets.map((net) => nets.indexOf(net)).join();
}

describe("the build sheet", () => {
  it.each(builds)("wires exactly the nets of $name", ({ build }) => {
    const sheet = buildSheet(build);
    const lugs = new Wiring(build).lugs.lugs.map(({ name }) => name);
    const copy: Build = { ...build, parts: { ...build.parts } };
    copy.wires = netsFromJoints(copy, sheet);
    expect(partition(copy, lugs)).toBe(partition(build, lugs));
  });

  it.each(builds)("heats every case of $name once, and every other joint once", ({ build }) => {
    const sheet = buildSheet(build);
    const joints = sheet.stages.flatMap((stage) => stage.joints);
    const lugs = joints.flatMap((joint) => joint.lugs);
    expect(new Set(lugs).size).toBe(lugs.length);
    const cases = new Set(build.wires.flatMap(({ from, to }) => [from, to]).filter((lug) => lug.endsWith(".case")));
    expect(
      joints
        .filter(({ kind }) => kind === "case")
        .map(({ lugs: [lug] }) => lug)
        .sort(),
    ).toEqual([...cases].sort());
    expect(joints.map(({ number }) => number)).toEqual(joints.map((_, index) => index + 1));
  });

  it.each(builds)("never gives ground and hot of $name the same colour", ({ build }) => {
    const { cuts } = buildSheet(build);
    const wiring = new Wiring(build);
    const { netOfLug } = wiring.wiredNets();
    const net = (lug: string) => netOfLug[wiring.lugs.indexOf(lug)];
    const ground = new Set(cuts.filter(({ from }) => net(from) === net("jack.sleeve")).map(({ colour }) => colour));
    const hot = new Set(cuts.filter(({ from }) => net(from) !== net("jack.sleeve")).map(({ colour }) => colour));
    expect(ground.size).toBe(1);
    for (const colour of ground) expect(hot).not.toContain(colour);
  });

  it("is the same to the byte for the same build", () => {
    for (const { build } of builds) {
      expect(JSON.stringify(buildSheet(structuredClone(build)))).toBe(JSON.stringify(buildSheet(build)));
    }
  });

  it("begins with cautions, works from the bottom control up, and leaves pickups to the last", () => {
    const sheet = buildSheet(readBuild(threeSingles()));
    expect(sheet.cautions.join(" ")).toMatch(/Unplug.*amplifier.*iron.*eye.*fumes.*lead.*low volume/);
    expect(sheet.stages.map(({ parts }) => parts)).toEqual([
      ["tone2"],
      ["tone1"],
      ["volume"],
      ["lever"],
      ["jack"],
      ["neck", "middle", "bridge"],
    ]);
    const last = sheet.stages.at(-1)!.joints.at(-1)!;
    expect(last).toMatchObject({ kind: "case", lugs: ["volume.case"] });
    expect(last.arrivals.map(({ other }) => other)).toEqual([
      "tone1.case",
      "volume.1",
      "neck.ground",
      "middle.ground",
      "bridge.ground",
      "jack.sleeve",
    ]);
  });

  it("solders a bent lug at its case alone, and says in which joint", () => {
    const sheet = buildSheet(readBuild(threeSingles()));
    const joints = sheet.stages.flatMap((stage) => stage.joints);
    expect(joints.flatMap(({ lugs }) => lugs)).not.toContain("volume.1");
    const last = joints.at(-1)!;
    expect(sheet.preparations.join(" ")).toContain(`volume.1 (joint ${last.number})`);
    expect(last.text).toMatch(/bundle, tin it/);
  });

  it("joins a lug of a shaft's switch to the case by a jumper, since it cannot be bent there", () => {
    const found = builds.flatMap(({ build }) =>
      buildSheet(build).connections.filter(
        ({ from, to }) =>
          [from, to].some((lug) => lug.endsWith(".case")) && [from, to].some((lug) => lug.includes(".s.")),
      ),
    );
    expect(found.length).toBeGreaterThan(0);
    expect(new Set(found.map(({ means }) => means))).toEqual(new Set(["jumper"]));
  });

  it("goes by the parts' own places where the build has them", () => {
    const file = threeSingles() as { parts: Record<string, object> };
    const parts = { ...file.parts, volume: { ...file.parts.volume, place: { x: -0.2, y: 0.1 } } };
    expect(buildSheet(readBuild({ ...file, parts })).stages[0]!.parts).toEqual(["volume"]);
  });

  it("measures wires along the guard's edges, with slack and both strips added", () => {
    const at = (x: number, y: number) => ({ place: { x, y } });
    const file = onePickup() as { parts: Record<string, object> };
    const parts = {
      ...file.parts,
      volume: { ...file.parts.volume, ...at(0.03, 0.08) },
      jack: { kind: "jack", ...at(-0.07, 0.15) },
    };
    const build = readBuild({ ...file, parts });
    const toJack = (allowances?: { slack: number; strip: number }) =>
      buildSheet(build, allowances).cuts.find(({ to }) => to === "jack.tip")!;
    expect(toJack({ slack: 0, strip: 0 })).toMatchObject({ run: 0.17, cut: 0.17 });
    // 170 mm + 20 mm + 2 × 6 mm = 202 mm, rounded up to 5 mm.
    expect(toJack()).toMatchObject({ run: 0.17, cut: 0.205, strip: 0.006 });
  });

  it("warns where the build itself colours ground and hot alike", () => {
    const file = onePickup() as { wires: unknown[] };
    const wires = file.wires.map((wire) => {
      if (!Array.isArray(wire) || !wire.some((lug: string) => lug.startsWith("jack"))) return wire;
      return { from: wire[0], to: wire[1], colour: "black" };
    });
    expect(buildSheet(readBuild({ ...file, wires })).notes[0]).toMatch(/black both to ground and to something hot/);
  });

  it("checks a pot's track before anything shunts it, and the cap's leg", () => {
    const [stage] = buildSheet(readBuild(threeSingles())).stages;
    expect(stage!.checks.find(({ between }) => between?.[0] === "tone2.1")?.text).toMatch(/200 kΩ to 300 kΩ/);
    const volume = buildSheet(readBuild(onePickup())).stages.find(({ parts }) => parts[0] === "tone")!;
    expect(volume.checks.map(({ text }) => text).join()).toMatch(/leg at tone.1 stands clear of every case/);
  });

  it("wires the nets of any wiring whatever", () => {
    const file = threeSingles() as { parts: Record<string, object> };
    const lugs = new Wiring(readBuild(file)).lugs.lugs.map(({ name }) => name);
    const lug = fc.constantFrom(...lugs);
    const pair = fc.tuple(lug, lug).filter(([a, b]) => a !== b);
    fc.assert(
      fc.property(fc.array(pair, { maxLength: 30 }), (wires) => {
        const build = readBuild({ ...file, wires });
        const copy: Build = { ...build, parts: { ...build.parts } };
        copy.wires = netsFromJoints(copy, buildSheet(build));
        expect(partition(copy, lugs)).toBe(partition(build, lugs));
      }),
      { numRuns: 200 },
    );
  });
});
