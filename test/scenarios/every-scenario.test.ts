import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build/read-build.ts";
import { Controls, expandSweep, parseSettings } from "../../src/build/settings.ts";
import { curveOf, ResponseEngine } from "../../src/response/responses.ts";
import { readScenario, scenarioFiles } from "./scenarios.ts";

const FREQUENCIES = Float64Array.of(82, 440, 3000, 12000);

describe.each(scenarioFiles)("%s", (file) => {
  const scenario = readScenario(file);
  const builds = [scenario.build, ...(scenario.compareWith ? [scenario.compareWith] : [])];

  test("bears the name of its file", () => {
    expect(`${scenario.id}.json`).toBe(file);
  });

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
