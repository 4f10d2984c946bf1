import type fc from "fast-check";
import type { BuildSheet, Sitting } from "../../../src/bench/sheet/build-sheet.ts";
import type { SheetJoint } from "../../../src/bench/sheet/sheet-writer.ts";
import { expandBuild } from "../../../src/build-file/expand.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { Wiring } from "../../../src/wiring/nets.ts";
import { anyPlan } from "../../build-file/any-plan.ts";
import { circuits } from "../../fixtures/circuits.ts";
import { scenarioBuilds } from "../scenario-builds.ts";

/** Every example, every customary plan and every circuit of the fixtures. */
export const builds: readonly { readonly name: string; readonly build: Build }[] = [
  ...scenarioBuilds,
  ...PLAN_PRESETS.map(({ id, title, plan }) => ({
    name: id,
    build: readBuild(expandBuild({ presolder: 1, title, plan })),
  })),
  ...circuits.map(({ name, build }) => ({ name, build: readBuild(build) })),
];

function buildOf(plan: object): Build | undefined {
  try {
    return readBuild(expandBuild({ presolder: 1, title: "", plan }));
  } catch {
    return undefined;
  }
}

/** Builds of plans that can be wired. */
export const anyPlannedBuild: fc.Arbitrary<Build> = anyPlan.map(buildOf).filter((build) => build !== undefined);

export function jointsIn(sittings: readonly Sitting[]): SheetJoint[] {
  return sittings.flatMap(({ stages }) => stages.flatMap(({ joints }) => joints));
}

/** For every pair of the given lugs, whether wires join them. */
export function partition(build: Build, lugs: readonly string[]): string {
  const wiring = new Wiring(build);
  const { netOfLug } = wiring.wiredNets();
  const nets = lugs.map((lug) => netOfLug[wiring.lugs.indexOf(lug)]!);
  return nets.map((net) => nets.indexOf(net)).join();
}

export function lugsOf(build: Build): string[] {
  return new Wiring(build).lugs.lugs.map(({ name }) => name);
}

/**
 * The nets that somebody makes who follows the joints alone: a lead's own lug meets the lug it is soldered to, and a wire all the
 * lugs that it is soldered to.
 */
export function builtFrom(build: Build, sheet: BuildSheet): Build {
  const wireNode = (number: number) => `wire${number}`;
  const wires = jointsIn(sheet.sittings).flatMap(({ at, ends }) =>
    ends.flatMap(({ lead, wire, from, means }) => [
      { from: lead ?? wireNode(wire!), to: at },
      // A bent lug grows out of its pot, and a leg that comes on from another lug is the leg still.
      ...(means === "bent lug" || means === "leg" ? [{ from, to: at }] : []),
    ]),
  );
  const nodes = sheet.pieces.map(({ number }) => [wireNode(number), { kind: "terminal" as const }] as const);
  const inside = build.wires.filter((wire) => "how" in wire && wire.how === "inside");
  return {
    ...build,
    parts: { ...build.parts, ...Object.fromEntries(nodes) },
    wires: [...inside, ...wires.filter(({ from, to }) => from !== to)],
  };
}
