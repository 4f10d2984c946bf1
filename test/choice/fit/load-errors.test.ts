import { describe, expect, it } from "vitest";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { runFit } from "../../../src/choice/fit/fit-job.ts";
import { fitTwoLoads } from "../../../src/choice/fit/fit-two-loads.ts";
import type { RatioSweep } from "../../../src/choice/fit/loaded-ratio.ts";
import { createUniform } from "../../../src/choice/uniform.ts";
import { effort } from "../../effort.ts";
import { LOADS } from "../../measured/measured-coils.ts";
import { createNormal, KNOWN_COILS, namedValues, noisyRatio } from "./known-coils.ts";

const { coil, loss } = KNOWN_COILS["single coil"]!;
const across = { resistance: 1e6, capacitance: 20e-12 };
const TOLERANCE = 0.05;
const NOISE = 0.0005;
const TRIALS = effort(10, 300);
/** By the laws of binomials: fewer than once in a thousand runs. */
const LEAST_INSIDE = effort(6, 273);
/** Of a standard deviation found from so many, by three of its own errors; evenly spread loads scatter a little less evenly than a normal law. */
const LOWEST = effort(0.4, 0.85);
const HIGHEST = effort(1.7, 1.15);

const METER = 0.005;
const knownBy = (ohms: number) => ({ across, resistance: { ohms, precision: METER }, models: [loss] });

type LoadName = "R" | "C";

function fitTold(loads: readonly LoadName[], random: () => number, normal: () => number) {
  const off = () => 1 + TOLERANCE * (2 * random() - 1);
  const sweeps = loads.map((name): RatioSweep => {
    const { resistance, capacitance } = LOADS[name];
    const load = { resistance: resistance * off(), capacitance: capacitance * off() };
    return {
      ...noisyRatio(coil, { load, across, noise: NOISE, offsetDb: 0, normal }),
      load: LOADS[name],
      tolerance: TOLERANCE,
    };
  });
  const known = knownBy(coil.resistance * (1 + METER * normal()));
  return runFit({ method: "two-loads", sweeps, known }, NO_CHECKPOINT);
}

describe.each<[string, readonly LoadName[]]>([
  ["one load", ["R"]],
  ["two loads", ["R", "C"]],
])("the errors of a coil by %s told with its tolerance", (_, loads) => {
  const [random, normal] = [createUniform(5), createNormal(6)];
  const truth: Record<string, number> = { ...namedValues(coil), lowFrequencyInductance: coil.inductance };
  const fits = Array.from({ length: TRIALS }, () => fitTold(loads, random, normal));
  const told = fits.flatMap(({ values, lowFrequencyInductance }) => [...values, lowFrequencyInductance]);

  it.each(["inductance", "capacitance", "lowFrequencyInductance"] as const)(
    "are how far the %s scatters where loads are anywhere within it",
    (name) => {
      const own = told.filter((each) => each.name === name);
      const square = own.reduce((sum, { value, relativeError }) => {
        return sum + (Math.log(value / truth[name]!) / relativeError) ** 2;
      }, 0);
      expect(Math.sqrt(square / own.length)).toBeGreaterThan(LOWEST!);
      expect(Math.sqrt(square / own.length)).toBeLessThan(HIGHEST!);
      const inside = own.filter(({ low, high }) => low <= truth[name]! && truth[name]! <= high).length;
      expect(inside).toBeGreaterThanOrEqual(LEAST_INSIDE);
    },
  );
});

it("a tolerance of one load moves no value, is in the errors, and is told", () => {
  const known = knownBy(coil.resistance);
  const sweep = noisyRatio(coil, { load: LOADS.C, across, noise: NOISE, offsetDb: 0, normal: createNormal(3) });
  const fitWith = (tolerance?: number) =>
    runFit({ method: "two-loads", sweeps: [{ ...sweep, tolerance }], known }, NO_CHECKPOINT);
  const [plain, told] = [fitWith(), fitWith(0.01)];
  const henries = [plain, told].map(({ lowFrequencyInductance: { value } }) => value);
  expect(Math.abs(Math.log(henries[1]! / henries[0]!))).toBeLessThan(0.3 * told.lowFrequencyInductance.relativeError);
  const off = { ...LOADS.C, capacitance: 1.01 * LOADS.C.capacitance };
  const moved = fitTwoLoads([{ ...sweep, load: off }], known).lowFrequencyInductance.value;
  const beside = Math.log(moved / henries[0]!) / Math.sqrt(3);
  const own = plain.lowFrequencyInductance.relativeError;
  // No more than the load alone, off by as much: the meter's resistance tells of the load too.
  expect(told.lowFrequencyInductance.relativeError).toBeGreaterThan(2 * own);
  expect(told.lowFrequencyInductance.relativeError).toBeLessThan(1.02 * Math.hypot(own, beside));
  expect(plain.notes.join()).toMatch(/taken as told, which the errors do not hold.*Say its tolerance/);
  expect(told.notes.join()).toMatch(/errors hold what loads within 1 % of what was told leave open/);
  expect(told.notes.join()).not.toContain("taken as told");
});

it("two loads within their tolerance tell each other's", () => {
  const normal = createNormal(4);
  const truths = { R: { resistance: 193e3, capacitance: 485e-12 }, C: { ...LOADS.C, capacitance: 10.5e-9 } };
  const sweepOf = (name: LoadName, tolerance?: number): RatioSweep => ({
    ...noisyRatio(coil, { load: truths[name], across, noise: NOISE, offsetDb: 0, normal }),
    load: LOADS[name],
    tolerance,
  });
  const offOf = (tolerance?: number) => {
    const sweeps = [sweepOf("R", tolerance), sweepOf("C", tolerance)];
    const fit = runFit({ method: "two-loads", sweeps, known: knownBy(coil.resistance) }, NO_CHECKPOINT);
    return Math.abs(fit.lowFrequencyInductance.value / coil.inductance - 1);
  };
  expect(offOf(0.05)).toBeLessThan(0.01);
  expect(offOf()).toBeGreaterThan(0.03);
});
