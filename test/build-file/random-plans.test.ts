import fc from "fast-check";
import { expect, test } from "vitest";
import { CATALOGUE } from "../../src/build-file/catalogue.ts";
import { expandBuild } from "../../src/build-file/expand.ts";
import { type LayoutName, layoutOf } from "../../src/build-file/plans/layouts.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { PresolderError } from "../../src/errors.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";

const FREQUENCIES = Float64Array.of(20, 82, 1000, 3000, 20_000);

const ohms = fc.constantFrom("100k", "250k", "300k", "500k", "1M", 25_000);
const farads = fc.constantFrom("470p", "680p", "1n", "22n", "223", ".047", "0.1uF");
const type = fc.constantFrom(...CATALOGUE.pickups.map(({ name }) => name));
/** Left out more often than not, since every option more makes a plan likelier to be refused. */
const seldom = <T>(value: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 5, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: value });
const where = fc.oneof(
  fc.constantFrom("volume", "volume1", "tone", "tone1", "tone2"),
  fc.constantFrom("mini", "other").map((name) => ({ switch: name })),
);
const pickupName = fc.constantFrom("neck", "middle", "bridge");

function plansOf(layout: LayoutName): fc.Arbitrary<object> {
  const { pickups, tones } = layoutOf(layout);
  const own = fc.constantFrom(...pickups);
  const tone = fc.record({
    pot: ohms,
    cap: farads,
    noLoad: seldom(fc.constant(true)),
    taper: seldom(fc.constantFrom("linear", "audio", "reverse-audio")),
    pickups: fc.option(fc.uniqueArray(own, { minLength: 1, maxLength: 2 }), { nil: undefined, freq: 2 }),
  });
  const by = fc.oneof(
    where,
    fc.constantFrom(2, 4).map((position) => ({ position })),
  );
  const named = fc.tuple(...pickups.map(() => type)).map((types) => types.map((name, i) => [pickups[i], name]));
  return fc
    .record({
      layout: fc.constant(layout),
      pickups: named.map((entries) => Object.fromEntries(entries)),
      volume: ohms,
      tones: fc.array(tone, { minLength: tones.min, maxLength: tones.max }),
      independentVolumes: seldom(fc.boolean()),
      toneFeed: seldom(fc.constantFrom("before-volume", "after-volume")),
      trebleBleed: seldom(fc.record({ capacitance: farads, series: ohms }, { requiredKeys: ["capacitance"] })),
      split: seldom(fc.record({ pickup: pickupName, by, keeps: fc.constantFrom("slug", "screw") })),
      seriesParallel: seldom(fc.record({ pickup: pickupName, by: where })),
      phase: seldom(fc.record({ pickup: pickupName, by: where })),
      seriesLink: seldom(fc.record({ pickups: fc.tuple(own, own), by: where })),
      alwaysOn: seldom(fc.record({ pickup: own, by: where })),
      resistors: seldom(
        fc.array(fc.record({ across: fc.oneof(own, fc.constant("volume")), resistance: ohms }), { maxLength: 2 }),
      ),
      grounds: seldom(fc.constantFrom("cases", "star")),
      shield: seldom(fc.boolean()),
    })
    .map((made) => JSON.parse(JSON.stringify(made)));
}

const plan = fc.constantFrom(...CATALOGUE.layouts.map(({ name }) => name)).chain(plansOf);

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
    fc.property(plan, fc.array(fc.nat(1000), { minLength: 8, maxLength: 8 }), (input, seeds) => {
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
