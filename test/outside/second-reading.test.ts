import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { expandBuild } from "../../src/build-file/expand.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, rawSettings, type Settings } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { SILENCE_DB } from "../../src/decibels.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { magnitudeDb, unwrappedPhaseDegrees } from "../../src/response/level-and-phase.ts";
import { effort } from "../effort.ts";
import { describeWith } from "../tools.ts";

type Row = [frequencyHz: number, re: number, im: number];

const DIALS = [0, 0.7, 2, 5, 8.5, 10];
const SETTINGS_EACH = effort(4, 14);

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

function secondReading(cases: object[]): (Row[] | null)[] {
  const output = execFileSync("/usr/bin/python3", ["test/outside/long_form_to_ngspice.py"], {
    input: JSON.stringify(cases),
    maxBuffer: 64 * 2 ** 20,
  });
  return JSON.parse(output.toString());
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
      const column = (i: 0 | 1 | 2) => Float64Array.from(rows, (row) => row[i]);
      const reference = { re: column(1), im: column(2) };
      const curve = curveOf(engine.transfersIn(state), column(0));
      const level = magnitudeDb(reference);
      const phase = unwrappedPhaseDegrees(reference);
      for (const [i, expected] of level.entries()) {
        // Below −150 dB ngspice itself leaves only rounding.
        if (expected < -150) continue;
        expect(Math.abs(curve.magnitude[i]! - expected)).toBeLessThan(0.001);
        const turn = curve.phase[i]! - phase[i]!;
        expect(Math.abs(turn - 360 * Math.round(turn / 360))).toBeLessThan(0.01);
      }
    }
  });
});
