import { expect, test } from "vitest";
import { auditBuild } from "../../../src/bench/audit/audit.ts";
import { pickupSteps } from "../../../src/bench/mounting/pickups.ts";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";

const HSS: PlanInput = {
  layout: "lever-5-two-tone",
  pickups: { neck: "single-covered", middle: "single-vintage-rwrp", bridge: "humbucker-vintage" },
  volume: "250k",
  tones: ["neck", "bridge"].map((pickup) => ({ pot: "250k", cap: "22n", pickups: [pickup] })),
};

test.each<[string, Partial<PlanInput>, string[]]>([
  ["with every ground lead on a case", {}, []],
  ["whose covered bridge has a phase switch", { phase: { pickup: "bridge", by: "volume" } }, ["bridge"]],
  ["whose neck stands on the bridge", { seriesLink: { pickups: ["neck", "bridge"], by: "volume" } }, ["neck"]],
  ["whose bare middle has a phase switch", { phase: { pickup: "middle", by: "volume" } }, []],
  [
    "whose bridge has four leads",
    { pickups: { ...HSS.pickups, bridge: "humbucker-medium" }, phase: { pickup: "bridge", by: "volume" } },
    [],
  ],
])("a guard %s: the metal to part is that of %j", (_, change, parted) => {
  const build = readBuild({ presolder: 1, plan: { ...HSS, ...change } });
  const found = auditBuild(build).filter(({ code }) => code === "metal-to-part");
  expect(found.flatMap(({ lugs }) => lugs)).toEqual(parted.flatMap((name) => [`${name}.ground`, `${name}.shield`]));
  const step = pickupSteps(build).find(({ title }) => title === "Part the metal from the ground lead");
  expect(step?.parts ?? []).toEqual(parted);
  if (step) expect(step.text).toMatch(/never an end of the winding.*meter must read open/);
});
