import { describe, expect, it, test } from "vitest";
import { fitTwoLoads } from "../../../src/choice/fit/fit-two-loads.ts";
import { loadedRatio, type RatioSweep } from "../../../src/choice/fit/loaded-ratio.ts";
import { PresolderError } from "../../../src/errors.ts";
import type { CoilValues } from "../../../src/response/coil-ladder.ts";
import { effort } from "../../effort.ts";
import { LOADS, MEASURED_COILS, type MeasuredCoil, ratiosOf } from "../../measured/measured-coils.ts";
import { createNormal, KNOWN_COILS, namedValues, noisyRatio } from "./known-coils.ts";

const INSTRUMENT = { resistance: 1e6, capacitance: 20e-12 };
const BOTH = [LOADS.R, LOADS.C] as const;

const COILS = {
  "single coil": KNOWN_COILS["single coil"]!,
  "wide single coil": KNOWN_COILS["wide single coil"]!,
  "covered humbucker": {
    coil: {
      resistance: 8400,
      inductance: 3.3,
      capacitance: 140e-12,
      loss: [{ resistance: 14e3, inductance: 1.1 }, { resistance: 600e3 }],
    } satisfies CoilValues,
    loss: "section-and-resistor",
  },
} as const;

const TRIALS = effort(20, 100);
/** Of so many trials 95 % are expected inside, with a standard deviation of 1 (2.2); four of those are allowed. */
const LEAST_INSIDE = effort(15, 86);

const sweepsOf = (coil: CoilValues, noise: number, normal: () => number, offsetsDb = [0.3, -0.2]): RatioSweep[] =>
  BOTH.map((load, i) => noisyRatio(coil, { load, across: INSTRUMENT, noise, normal, offsetDb: offsetsDb[i]! }));

describe("a coil's voltage unloaded over loaded, under two loads, with 0.5 % noise and levels that were touched", () => {
  test.each(Object.entries(COILS))("holds the true values of a %s in its ranges as often as promised", (_, known) => {
    const truth = namedValues(known.coil);
    const normal = createNormal(17);
    const inside: Record<string, number> = {};
    for (let trial = 0; trial < TRIALS; trial++) {
      const sweeps = sweepsOf(known.coil, 0.005, normal);
      const { values } = fitTwoLoads(sweeps, { across: INSTRUMENT, models: [known.loss] });
      for (const { name, low, high } of values)
        inside[name] = (inside[name] ?? 0) + (low <= truth[name]! && truth[name]! <= high ? 1 : 0);
    }
    expect(Object.keys(inside).sort()).toEqual(Object.keys(truth).sort());
    for (const [name, count] of Object.entries(inside)) expect(count, name).toBeGreaterThanOrEqual(LEAST_INSIDE);
  });

  test.each(Object.entries(COILS))("finds which loss a %s has by itself", (_, known) => {
    const fit = fitTwoLoads(sweepsOf(known.coil, 0.005, createNormal(5)), { across: INSTRUMENT });
    expect(fit.loss).toBe(known.loss);
    expect(fit.precision.value).toBeGreaterThan(0.004);
    expect(fit.precision.value).toBeLessThan(0.006);
  });

  test("does not care by how much a gain was touched between two records", () => {
    const { coil, loss } = COILS["wide single coil"];
    const fits = [
      [0, 0],
      [3, -1.5],
    ].map((offsets) =>
      fitTwoLoads(sweepsOf(coil, 0.005, createNormal(3), offsets), { across: INSTRUMENT, models: [loss] }),
    );
    for (const [i, { value }] of fits[0]!.values.entries()) expect(fits[1]!.values[i]!.value / value).toBeCloseTo(1, 6);
  });
});

describe("where a coil's ratios cannot tell, the fit refuses", () => {
  const { coil } = COILS["single coil"];
  const refusalOf = (act: () => unknown) => {
    try {
      act();
    } catch (error) {
      if (error instanceof PresolderError) return error;
      throw error;
    }
    throw new Error("nothing was refused");
  };

  it("one load without a DC resistance, and takes it with one", () => {
    const [sweep] = sweepsOf(coil, 0.001, createNormal(2));
    const refusal = refusalOf(() => fitTwoLoads([sweep!], { across: INSTRUMENT }));
    expect([refusal.code, refusal.message]).toEqual(["DATA_INSUFFICIENT", expect.stringContaining("second load")]);
    const resistance = { ohms: coil.resistance, precision: 0.005 };
    const { lowFrequencyInductance } = fitTwoLoads([sweep!], { across: INSTRUMENT, resistance });
    expect(lowFrequencyInductance.value / coil.inductance).toBeCloseTo(1, 1);
  });

  it("sweeps that end far below the resonance", () => {
    const low = sweepsOf(coil, 0.005, createNormal(2)).map(({ load, ...lists }) => ({
      load,
      frequenciesHz: lists.frequenciesHz.slice(0, 15),
      levelsDb: lists.levelsDb.slice(0, 15),
      degrees: lists.degrees.slice(0, 15),
    }));
    expect(refusalOf(() => fitTwoLoads(low)).message).toContain("the winding capacitance");
    expect(refusalOf(() => fitTwoLoads([low[0]!, { ...low[1]!, frequenciesHz: [100] }])).message).toContain(
      "at least 8",
    );
  });
});

const TOLERANCE = 0.1;
/** Its steel hardly shows: the circuit with a section follows it no better (0.32 and 0.21 dB) than with a resistor (0.34 and 0.25 dB). */
const HARDLY_TOLD = "b0bf760";

describe("real coils, by their DC resistance and both ratios (open data set strayr/pickupAnalyseR-data, CC0-1.0)", () => {
  const fitOf = (coil: MeasuredCoil) =>
    fitTwoLoads(
      (["R", "C"] as const).map((load) => ({ ...ratiosOf(coil.name, load), load: LOADS[load] })),
      { resistance: { ohms: coil.resistance, precision: 0.01 }, across: { resistance: 1e6, capacitance: 0 } },
    );

  test("their errors go together where neither noise nor a gain explains them, and the answer says so", () => {
    const { notes } = fitOf(MEASURED_COILS.find(({ name }) => name === "1a5c3e6")!);
    expect(notes.join(" ")).toMatch(/of 160 only some \d+ count as independent/);
  });

  test.each(MEASURED_COILS.map((coil) => [coil.kind, coil.name, coil] as const))("%s (%s)", (_kind, name, coil) => {
    const { loss, values, lowFrequencyInductance } = fitOf(coil);
    const henries = coil.inductance + (coil.section?.inductance ?? 0);
    expect(Math.abs(values[0]!.value / coil.resistance - 1)).toBeLessThan(TOLERANCE);
    const isHardlyTold = name === HARDLY_TOLD;
    expect(Math.abs(lowFrequencyInductance.value / henries - 1)).toBeLessThan(isHardlyTold ? 0.15 : TOLERANCE);
    if (coil.section && !isHardlyTold) expect(loss).toMatch(/section/);
    else expect(loss).toMatch(/none|resistor/);
  });
});

test("the ratio is 1 plus the coil's impedance times the load's admittance: 2 where they are equal at direct current", () => {
  const load = { resistance: 6000, capacitance: 0 };
  const { re, im } = loadedRatio({ resistance: 6000, inductance: 2.4, capacitance: 0 }, 1e-6, load);
  expect(re).toBeCloseTo(2, 9);
  expect(im).toBeCloseTo(0, 6);
});
