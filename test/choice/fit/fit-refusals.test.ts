import { describe, expect, it } from "vitest";
import { coilImpedance } from "../../../src/choice/fit/coil-model.ts";
import { fitImpedance } from "../../../src/choice/fit/fit-impedance.ts";
import { fitResonances } from "../../../src/choice/fit/fit-resonances.ts";
import { fitResponse } from "../../../src/choice/fit/fit-response.ts";
import { rangeFromResistance } from "../../../src/choice/fit/resistance-range.ts";
import { peakHz } from "../../../src/choice/fit/resonance-peak.ts";
import { PresolderError } from "../../../src/errors.ts";
import { createNormal, KNOWN_COILS, noisyResponse } from "./known-coils.ts";
import { resonanceHz } from "./lossless-resonance.ts";

const { coil } = KNOWN_COILS["single coil"]!;
const LOAD = { resistance: 125e3, capacitance: 500e-12 };

function refusalOf(act: () => unknown): PresolderError {
  try {
    act();
  } catch (error) {
    if (error instanceof PresolderError) return error;
    throw error;
  }
  throw new Error("nothing was refused");
}

describe("where the data cannot tell, a fit refuses", () => {
  it("a table that ends far below the resonance does not fix the winding capacitance", () => {
    const normal = createNormal(2);
    const frequenciesHz = [50, 80, 120, 200, 300, 400, 500, 600];
    const ohms = frequenciesHz.map((hertz) => {
      const { re, im } = coilImpedance(coil, hertz);
      return Math.hypot(re, im) * Math.exp(0.005 * normal());
    });
    const refusal = refusalOf(() => fitImpedance({ frequenciesHz, ohms }));
    expect(refusal.code).toBe("DATA_INSUFFICIENT");
    expect(refusal.message).toContain("the winding capacitance");
  });

  it("a response without a DC resistance does not tell the impedance", () => {
    const table = noisyResponse(coil, LOAD, 0.04, createNormal(7));
    expect(refusalOf(() => fitResponse(table, { load: LOAD })).message).toContain("give the DC resistance too");
  });

  it("two resonances with nearly the same capacitor do not fix the inductance", () => {
    const setup = {
      resistance: { ohms: 6000, precision: 0.005 },
      peakOf: "impedance",
      across: { resistance: Number.POSITIVE_INFINITY, capacitance: 0 },
      precision: undefined,
    } as const;
    const readings = [470e-12, 480e-12].map((capacitanceFarads) => ({
      capacitanceFarads,
      frequencyHz: resonanceHz(coil, capacitanceFarads, setup),
    }));
    expect(refusalOf(() => fitResonances(readings, setup)).code).toBe("DATA_INSUFFICIENT");
    expect(refusalOf(() => fitResonances(readings.slice(1), setup)).message).toContain("at least 2 different ones");
  });
});

describe("a response through a known load", () => {
  it.each(["single coil", "hot single coil"])("gives a %s back within three standard errors", (name) => {
    const known = KNOWN_COILS[name]!.coil;
    const table = noisyResponse(known, LOAD, 0.0434, createNormal(13));
    const resistance = { ohms: known.resistance, precision: 0.005 };
    const fit = fitResponse(table, { load: LOAD, resistance, models: ["resistor"] });
    const truth = [known.resistance, known.inductance, known.capacitance, known.loss as number];
    expect(fit.values).toHaveLength(truth.length);
    for (const [i, { value, relativeError }] of fit.values.entries())
      expect(Math.abs(Math.log(value / truth[i]!))).toBeLessThan(3 * relativeError);
    // 0.0434 dB is 0.5 %.
    expect(fit.precision.value).toBeGreaterThan(0.004);
    expect(fit.precision.value).toBeLessThan(0.006);
  });
});

describe("a DC resistance alone", () => {
  it("gives a range that is wide, holds the usual pickup, and moves with the resistance", () => {
    const { inductance } = rangeFromResistance("humbucker", 8000);
    // R. Stanley: 4.7 H is typical of a humbucker.
    expect(inductance.low).toBeLessThan(4.7);
    expect(inductance.high).toBeGreaterThan(4.7);
    expect(inductance.high / inductance.low).toBeGreaterThan(2);
    expect(rangeFromResistance("single", 12_000).inductance.low).toBeGreaterThan(
      rangeFromResistance("single", 6000).inductance.low,
    );
  });
});

describe("resonance frequencies", () => {
  const across = { resistance: 1e6, capacitance: 20e-12 };
  it.each(["impedance", "response"] as const)("of the %s stand where its magnitude is highest", (peakOf) => {
    const lossless = { resistance: 9000, inductance: 3, capacitance: 120e-12, loss: undefined };
    const extra = 330e-12;
    const at = resonanceHz(lossless, extra, { peakOf, across });
    const beside = { ...across, capacitance: across.capacitance + extra };
    const height = (hertz: number) => {
      const { re, im } = coilImpedance(lossless, hertz, beside);
      const omega = 2 * Math.PI * hertz;
      // The voltage divider's gain is Z over the branch that carries the EMF.
      return Math.hypot(re, im) / (peakOf === "impedance" ? 1 : Math.hypot(9000, omega * 3));
    };
    for (const near of [0.999, 1.001]) expect(height(at * near)).toBeLessThan(height(at));
    expect(peakHz(lossless, beside, peakOf) / at).toBeCloseTo(1, 7);
  });
});
