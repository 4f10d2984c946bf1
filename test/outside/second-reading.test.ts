import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { expandBuild } from "../../src/build-file/expand.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, rawSettings, type Settings } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { SILENCE_DB } from "../../src/decibels.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { effort } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { expectCurveOf, secondReading } from "./second-reading.ts";

const DIALS = [0, 0.7, 2, 5, 8.5, 10];
const SETTINGS_EACH = effort(4, 8);

/** Settings spread over all that a guard can be set to, the same on every run. */
function spreadSettings(controls: Controls): Settings[] {
  const positions = (count: number) => Array.from({ length: count }, (_, index) => index + 1);
  const axes: [string, readonly number[]][] = [
    ...controls.switches.map(({ name, table }): [string, number[]] => [name, positions(table.positions.length)]),
    ...controls.pots.map((name): [string, number[]] => [name, DIALS]),
  ];
  return Array.from({ length: SETTINGS_EACH }, (_, run) => {
    const sweep = Object.fromEntries(
      axes.map(([name, values], axis) => [name, [values[(run * (axis + 1) + axis) % values.length]!]]),
    );
    return expandSweep(controls, sweep)[0]!;
  });
}

const scenarios = readdirSync("scenarios")
  .map((file) => JSON.parse(readFileSync(`scenarios/${file}`, "utf8")) as Record<string, unknown>)
  .flatMap((scenario) => [
    [`${scenario.id}`, scenario.build] as const,
    ...(scenario.compareWith ? [[`${scenario.id}, the other guard`, scenario.compareWith] as const] : []),
  ]);

describeWith("ngspice", "an independent reading of the long form gives the same curve in ngspice", () => {
  test.each(scenarios)("%s", (_, input) => {
    const raw = input as { plan?: unknown };
    const long = raw.plan ? expandBuild(raw) : raw;
    const build = readBuild(input);
    const controls = new Controls(build);
    const engine = new ResponseEngine(build);
    const settings = spreadSettings(controls);
    const answers = secondReading(settings.map((state) => ({ build: long, settings: rawSettings(controls, state) })));
    for (const [index, rows] of answers.entries()) {
      const state = settings[index]!;
      if (!rows) {
        const level = curveOf(engine.transfersIn(state), Float64Array.of(1000)).magnitude[0];
        expect(level).toBe(SILENCE_DB);
        continue;
      }
      expectCurveOf(engine, state, rows);
    }
  });
});
