import { describe, expect, test } from "vitest";
import { auditBuild } from "../../../src/bench/audit/audit.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { readScenario, scenarioFiles } from "../../scenarios/scenarios.ts";

/** Scenarios wired wrongly on purpose, with what must be found in them. */
const WRONG: Readonly<Record<string, readonly string[]>> = {
  "came-back-wrong": ["tone-never-reaches", "pair-out-of-phase"],
  "spare-ground-wire": ["case-ungrounded", "control-no-effect"],
};

const scenarios = scenarioFiles.map(readScenario).map(({ id, build, compareWith }) => ({
  id,
  builds: [build, ...(compareWith ? [compareWith] : [])],
}));

const aboveNote = (input: unknown) =>
  auditBuild(readBuild(input))
    .filter(({ severity }) => severity !== "note")
    .map(({ code, message }) => `${code}: ${message}`);

describe("plans and scenarios wired as they should be", () => {
  test.each(PLAN_PRESETS)("the plan $id has no finding above a note", ({ plan }) => {
    expect(aboveNote({ presolder: 1, plan, cable: { length: "3m", capacitance: "100p" } })).toEqual([]);
  });

  test.each(scenarios.filter(({ id }) => !(id in WRONG)))(
    "the scenario $id has no finding above a note",
    ({ builds }) => {
      for (const build of builds) expect(aboveNote(build)).toEqual([]);
    },
  );
});

describe("scenarios wired wrongly on purpose", () => {
  test.each(Object.entries(WRONG))("%s shows its faults", (id, codes) => {
    const { builds } = scenarios.find((scenario) => scenario.id === id)!;
    const found = auditBuild(readBuild(builds[0])).map(({ code }) => code);
    for (const code of codes) expect(found).toContain(code);
  });
});
