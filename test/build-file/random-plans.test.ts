import fc from "fast-check";
import { expect, test } from "vitest";
import { expandBuild } from "../../src/build-file/expand.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { PresolderError } from "../../src/errors.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { anyPlan } from "./any-plan.ts";

const FREQUENCIES = Float64Array.of(20, 82, 1000, 3000, 20_000);

/** Any state of a build's controls, drawn from a seed for each. */
function settingsFrom(controls: Controls, seeds: readonly number[]): RawSettings {
  const seed = (index: number) => seeds[index % seeds.length]!;
  return Object.fromEntries([
    ...controls.pots.map((pot, i): [string, number] => [pot, seed(i) % 11]),
    ...controls.switches.map(({ name, table }, i): [string, number] => [
      name,
      1 + (seed(i + 3) % table.positions.length),
    ]),
  ]);
}

test("any plan is either refused inside the plan or expands to a long form with finite curves in any setting", () => {
  let [wired, refused] = [0, 0];
  fc.assert(
    fc.property(anyPlan, fc.array(fc.nat(1000), { minLength: 8, maxLength: 8 }), (input, seeds) => {
      let long: unknown;
      try {
        long = expandBuild({ presolder: 1, plan: input });
      } catch (error) {
        if (!(error instanceof PresolderError)) throw error;
        refused++;
        expect(error.code).toBe("BUILD_INVALID");
        expect(error.faults.length).toBeGreaterThan(0);
        for (const fault of error.faults) expect(fault.path).toMatch(/^build\.plan/);
        return;
      }
      wired++;
      const build = readBuild(JSON.parse(JSON.stringify(long)));
      const controls = new Controls(build);
      const settings = parseSettings(controls, settingsFrom(controls, seeds));
      const { magnitude, phase } = curveOf(new ResponseEngine(build).transfersIn(settings), FREQUENCIES);
      expect([...magnitude, ...phase].every(Number.isFinite)).toBe(true);
      expect(JSON.stringify(expandBuild({ presolder: 1, plan: input }))).toBe(JSON.stringify(long));
    }),
    { numRuns: 300 },
  );
  expect(wired).toBeGreaterThan(30);
  expect(refused).toBeGreaterThan(30);
});
