import { expect, test } from "vitest";
import { auditBuild } from "../../../src/bench/audit/audit.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { describeSetting } from "../../../src/response/labels/setting-describer.ts";
import { presetGuard } from "../../fixtures/harness.ts";
import { scenarioBuilds } from "../scenario-builds.ts";
import { buildOf, humbucker, splitHumbucker, threeSingles } from "./guards.ts";

const CAME_BACK = scenarioBuilds.find(({ name }) => name === "came-back-wrong")!.build;

test("a pair out of phase is said to be found by the phase check, and rods not to be pushed out", () => {
  const { message, remedy } = auditBuild(CAME_BACK).find(({ code }) => code === "pair-out-of-phase")!;
  expect(message).toContain("an ohmmeter cannot show it, the phase check can");
  expect(remedy).toMatch(/Only a loose bar magnet can be turned: rods are never pushed out/);
});

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

test("a cap that two tones share is told once, with both of them", () => {
  const build = buildOf(threeSingles, { add: [["cap.a", "tone2.case"]] });
  const found = auditBuild(build).filter(({ severity }) => severity !== "note");
  expect(found).toMatchObject([{ code: "unused-lug-touches", lugs: ["tone1.1", "tone2.1", "cap.a", "cap.b"] }]);
  expect(found[0]!.message).toContain("tone1 and tone2 pass direct current");
});

const CAP_LEGS = PLAN_PRESETS.flatMap(({ id }) =>
  Object.entries(presetGuard(id).parts).flatMap(([name, { kind }]) =>
    kind === "cap" ? [`${name}.a`, `${name}.b`].map((leg) => [id, leg] as const) : [],
  ),
);

test.each(CAP_LEGS)("%s: the cap's leg %s on a case is at most one finding", (id, leg) => {
  const guard = presetGuard(id);
  const pot = Object.keys(guard.parts).find((name) => guard.parts[name]!.kind === "pot");
  const build = readBuild({ ...guard, wires: [...guard.wires, [leg, `${pot}.case`]] });
  const before = auditBuild(readBuild(guard)).map(({ message }) => message);
  const found = auditBuild(build).filter(({ message, severity }) => severity !== "note" && !before.includes(message));
  expect(found.length, found.map(({ message }) => message).join("\n")).toBeLessThan(2);
});

test("two coils with the same pole up cancel hum once one loose magnet is turned and its start and finish swapped", () => {
  const alike = { winding: "forward", magnet: "north" };
  const build = buildOf(splitHumbucker, { parts: { bridge: humbucker({}, alike) } });
  const { remedy } = auditBuild(build).find(({ code }) => code === "hum-not-cancelling")!;
  expect(remedy).toMatch(
    /swap that coil's start and finish, where it sits on a loose bar magnet; rods are never pushed/,
  );
  const exchange: Record<string, string> = {
    "bridge.screw.start": "bridge.screw.finish",
    "bridge.screw.finish": "bridge.screw.start",
  };
  const turned = buildOf(
    {
      ...splitHumbucker,
      wires: splitHumbucker.wires.map(([from, to]) => [exchange[from] ?? from, exchange[to] ?? to] as const),
    },
    { parts: { bridge: humbucker({}, { ...alike, magnet: "south" }) } },
  );
  const heard = describeSetting(turned, new Controls(turned).atRest);
  expect([heard.hum, heard.phase]).toEqual(["cancelling", "in phase"]);
  expect(auditBuild(turned).map(({ code }) => code)).not.toContain("hum-not-cancelling");
});
