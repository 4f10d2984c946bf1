import { expect, test } from "vitest";
import { auditBuild } from "../../../src/bench/audit/audit.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { describeSetting } from "../../../src/response/labels/setting-describer.ts";
import { presetGuard } from "../../fixtures/harness.ts";
import { scenarioBuilds } from "../scenario-builds.ts";

const CAME_BACK = scenarioBuilds.find(({ name }) => name === "came-back-wrong")!.build;

test("the remedy of a pickup out of phase says what becomes of hum either way, as the circuit has it", () => {
  const { remedy } = auditBuild(CAME_BACK).find(({ code }) => code === "pair-out-of-phase")!;
  expect(remedy).toMatch(/^Swap the two leads of middle\./);
  expect(remedy).toContain(
    "With its leads swapped, hum is cancelling there; with the magnet turned instead, not cancelling.",
  );
  const humIn = (wires: typeof CAME_BACK.wires) => {
    const build = { ...CAME_BACK, wires };
    return describeSetting(build, parseSettings(new Controls(build), { lever: 2 })).hum;
  };
  const exchange: Record<string, string> = { "middle.hot": "middle.ground", "middle.ground": "middle.hot" };
  const at = (lug: string) => exchange[lug] ?? lug;
  expect(humIn(CAME_BACK.wires.map((wire) => ({ ...wire, from: at(wire.from), to: at(wire.to) })))).toBe("cancelling");
});

test("a cap leg that touches the case is one finding, with the remedy for it", () => {
  const guard = presetGuard("singles-neck-middle");
  const touching: BuildInput = { ...guard, wires: [...guard.wires, ["tone1.2", "tone1.case"]] };
  const found = auditBuild(readBuild(touching)).filter(({ severity }) => severity !== "note");
  expect(found).toMatchObject([{ code: "unused-lug-touches", lugs: ["tone1.2", "cap1.a", "cap1.b"] }]);
  expect(found[0]!.message).toMatch(/^cap1 is bridged: one of its legs, or tone1\.2, touches the case/);
  expect(found[0]!.remedy).toContain("clear of the case");
});
