import { describe, expect, it } from "vitest";
import { coilImpedance } from "../../../src/choice/fit/coil-model.ts";
import { fitImpedance } from "../../../src/choice/fit/fit-impedance.ts";
import { fitResonances } from "../../../src/choice/fit/fit-resonances.ts";
import { logSpaced } from "../../../src/response/frequencies.ts";
import { effort } from "../../effort.ts";
import { MEASURED_COILS } from "../../measured/measured-coils.ts";
import { createNormal, KNOWN_COILS, namedValues, noisyImpedance } from "./known-coils.ts";
import { resonanceHz } from "./lossless-resonance.ts";

const TRIALS = effort(30, 100);
/** Of 100 trials 95 are expected inside 95 % intervals, with a standard deviation of 2.2 (of 30: 28.5 and 1.2); four of those are allowed. */
const LEAST_INSIDE = effort(24, 86);

describe("fits of an impedance table with 0.5 % noise", () => {
  it.each(Object.keys(KNOWN_COILS))(
    "have the true values of a %s in their own intervals as often as promised",
    (name) => {
      const { coil, loss } = KNOWN_COILS[name]!;
      const truth = namedValues(coil);
      const normal = createNormal(11);
      const inside: Record<string, number> = {};
      for (let trial = 0; trial < TRIALS; trial++) {
        const fit = fitImpedance(noisyImpedance(coil, 0.005, normal), { models: [loss] });
        for (const { name: key, low, high } of fit.values)
          inside[key] = (inside[key] ?? 0) + (low <= truth[key]! && truth[key]! <= high ? 1 : 0);
      }
      expect(Object.keys(inside).sort()).toEqual(Object.keys(truth).sort());
      for (const [key, count] of Object.entries(inside)) expect(count, key).toBeGreaterThanOrEqual(LEAST_INSIDE);
      // Intervals that always hold the truth would be no standard errors at all.
      expect(Math.min(...Object.values(inside))).toBeLessThan(TRIALS);
    },
  );

  it.each(Object.keys(KNOWN_COILS))("find for themselves which loss a %s has, or one that does as well", (name) => {
    const { coil, loss } = KNOWN_COILS[name]!;
    const fit = fitImpedance(noisyImpedance(coil, 0.005, createNormal(5)));
    const chosen = fit.considered.find((model) => model.loss === fit.loss)!;
    const right = fit.considered.find((model) => model.loss === loss)!;
    expect(right.usable).toBe(true);
    expect(chosen.aicc!).toBeLessThanOrEqual(right.aicc!);
    expect(fit.precision.value).toBeGreaterThan(0.004);
    expect(fit.precision.value).toBeLessThan(0.006);
  });
});

describe("fits of resonances with known capacitors", () => {
  const coil = { resistance: 6000, inductance: 2.4, capacitance: 110e-12, loss: undefined };
  const setup = {
    resistance: { ohms: 6000, precision: 0.005 },
    peakOf: "impedance",
    across: { resistance: Number.POSITIVE_INFINITY, capacitance: 0 },
    precision: 0.005,
    type: "rods",
  } as const;
  const capacitors = [0, 100e-12, 470e-12, 1e-9];

  it("have the true values in 95 % of their own 95 % intervals", () => {
    const normal = createNormal(3);
    let [inductance, capacitance] = [0, 0];
    for (let trial = 0; trial < TRIALS; trial++) {
      const readings = capacitors.map((capacitanceFarads) => ({
        capacitanceFarads,
        frequencyHz: resonanceHz(coil, capacitanceFarads, setup) * Math.exp(0.005 * normal()),
      }));
      const [, l, c] = fitResonances(readings, setup).values;
      if (l!.low <= 2.4 && 2.4 <= l!.high) inductance++;
      if (c!.low <= 110e-12 && 110e-12 <= c!.high) capacitance++;
    }
    expect(Math.min(inductance, capacitance)).toBeGreaterThanOrEqual(LEAST_INSIDE);
    expect(Math.min(inductance, capacitance)).toBeLessThan(TRIALS);
  });

  it("say that steel hides inductance from a resonance: that of a real steel-cored coil's is a tenth to a third under its own", () => {
    const { resistance, inductance, section, capacitance } = MEASURED_COILS.find(({ name }) => name === "01f8d06")!;
    const steel = { resistance, inductance, capacitance, loss: [section!] };
    const readings = [0, 470e-12, 1e-9].map((capacitanceFarads) => {
      const size = (hertz: number) => {
        const { re, im } = coilImpedance(steel, hertz, { resistance: 1e6, capacitance: capacitanceFarads });
        return Math.hypot(re, im);
      };
      const grid = logSpaced(1000, 12_000, 4000);
      return {
        capacitanceFarads,
        frequencyHz: grid.reduce((best, hertz) => (size(hertz) > size(best) ? hertz : best)),
      };
    });
    const own = { ...setup, type: undefined, resistance: { ohms: resistance, precision: 0.005 } };
    const { lowFrequencyInductance, notes } = fitResonances(readings, own);
    const hidden = 1 - lowFrequencyInductance.value / (inductance + section!.inductance);
    expect(hidden).toBeGreaterThan(0.1);
    expect(hidden).toBeLessThan(0.33);
    expect(notes.join(" ")).toContain("steel");
  });
});
