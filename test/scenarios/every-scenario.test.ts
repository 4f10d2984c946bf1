import { describe, expect, test } from "vitest";
import { auditBuild } from "../../src/bench/audit/audit.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { parseScenario } from "../../src/build-file/scenario.ts";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { readScenario, scenarioFiles } from "./scenarios.ts";

const FREQUENCIES = Float64Array.of(82, 440, 3000, 12000);

describe.each(scenarioFiles)("%s", (file) => {
  const scenario = readScenario(file);
  const builds = [scenario.build, ...(scenario.compareWith ? [scenario.compareWith] : [])];

  test("bears the name of its file", () => {
    expect(`${scenario.id}.json`).toBe(file);
  });

  test(
    scenario.flaw ? "is wired wrongly, and the audit finds a fault" : "is wired well, and the audit finds no fault",
    () => {
      const findings = builds.flatMap((input) => auditBuild(readBuild(input)));
      const grave = findings
        .filter((finding) => finding.severity !== "note")
        .map(({ code, message }) => ({ code, message }));
      if (scenario.flaw) expect(grave).not.toEqual([]);
      else expect(grave).toEqual([]);
    },
  );

  test("reads, and its curves are finite in every setting it asks for", () => {
    for (const input of builds) {
      const build = readBuild(input);
      const controls = new Controls(build);
      expect(() => parseSettings(controls, scenario.settings)).not.toThrow();
      const engine = new ResponseEngine(build);
      for (const settings of expandSweep(controls, scenario.sweep, scenario.settings)) {
        const { magnitude } = curveOf(engine.transfersIn(settings), FREQUENCIES);
        expect([...magnitude].every(Number.isFinite), JSON.stringify(settings)).toBe(true);
      }
    }
  });
});

test("there are ten scenarios and more, plans and long forms, one of them at least wired wrongly", () => {
  const scenarios = scenarioFiles.map(readScenario);
  expect(scenarios.length).toBeGreaterThanOrEqual(10);
  expect(scenarios.some((scenario) => "plan" in scenario.build)).toBe(true);
  expect(scenarios.some((scenario) => "parts" in scenario.build)).toBe(true);
  expect(scenarios.some((scenario) => scenario.flaw !== undefined)).toBe(true);
});

test("a scenario file that is not in order is refused, field by field", () => {
  const attempt = () =>
    parseScenario({
      id: "Bad Name",
      title: "x",
      description: "too short",
      question: "?",
      build: { presolder: 2 },
      hint: 1,
    });
  expect(attempt).toThrow(/scenario\.id: expected lower-case words/);
  expect(attempt).toThrow(/unknown key "hint"/);
});

test("what a scenario is about shows in its curves: the two sides of every decision differ by a tenth of a decibel or more", () => {
  for (const file of scenarioFiles) {
    const { build, compareWith, sweep, settings, id } = readScenario(file);
    if (!compareWith) continue;
    const [a, b] = [readBuild(build), readBuild(compareWith)];
    const apart = expandSweep(new Controls(a), sweep, settings).map((setting) => {
      const [ours, theirs] = [a, b].map((side) => curveOf(new ResponseEngine(side).transfersIn(setting), FREQUENCIES));
      return Math.max(...ours!.magnitude.map((db, i) => Math.abs(db - theirs!.magnitude[i]!)));
    });
    expect(Math.max(...apart), id).toBeGreaterThan(0.1);
  }
});
