import { describe, expect, it } from "vitest";
import { coilImpedance } from "../../../src/choice/fit/coil-model.ts";
import type { LossModel } from "../../../src/choice/fit/coil-shapes.ts";
import { fitImpedance } from "../../../src/choice/fit/fit-impedance.ts";
import type { Fit } from "../../../src/choice/fit/fit-problem.ts";
import { fitTwoLoads } from "../../../src/choice/fit/fit-two-loads.ts";
import type { FittedValue } from "../../../src/choice/fit/fitted-value.ts";
import { peakHz } from "../../../src/choice/fit/resonance-peak.ts";
import { impedanceBehind, ratiosOf, tableOf } from "../../../src/measure/methods/behind-resistor.ts";
import { ratioOfLoads } from "../../../src/measure/methods/two-loads.ts";
import { TONES_HZ } from "../../../src/measure/signal/multitone.ts";
import { createNormal, namedValues } from "../../choice/fit/known-coils.ts";
import { effort } from "../../effort.ts";
import { admittance, COIL, type Complex, heardUnder, LOAD, over } from "../simulated-pickup.ts";
import { simulatedTransfer } from "../simulated-transfer.ts";

/** An instrument input. */
const INPUT = { resistance: 1e6, capacitance: 160e-12 };
/** Nine neighbours and three passes tell a scatter to a tenth. */
const SCATTER_KNOWN_TO = 0.1;

const TRIALS = effort(8, 200);
/** Of 200, 190 are expected with a standard deviation of 3.1; of 8, one in twenty thousand has fewer than 5. */
const LEAST_INSIDE = effort(5, 178);

const reading = (through: (hz: number) => Complex, normal: () => number) =>
  simulatedTransfer(through, normal, () => 1 + SCATTER_KNOWN_TO * normal());

/** As a meter read it. */
const meterReading = (normal: () => number) => ({ ohms: COIL.resistance * (1 + 0.005 * normal()), precision: 0.005 });

/** All loss models only where the choice between them is asked for: they take five times as long. */
type Models = readonly LossModel[] | undefined;

function byTwoLoads(normal: () => number, models?: Models): Fit {
  const [unloaded, loaded] = [reading(heardUnder(INPUT), normal), reading(heardUnder(INPUT, LOAD), normal)];
  const sweep = ratioOfLoads(unloaded, loaded, LOAD, true);
  return fitTwoLoads([sweep], { across: INPUT, resistance: meterReading(normal), models });
}

const OHMS = 470e3;

/** What lies behind the resistor as the second channel shows it, with its own input across it. */
const behind = (isThere: boolean) => (hz: number) => {
  const { re, im } = coilImpedance(COIL, hz);
  const norm = re * re + im * im;
  const [g, b] = isThere ? [re / norm, -im / norm] : [0, 0];
  const [gi, bi] = admittance(INPUT, hz);
  return over([1, 0], [1 + OHMS * (g + gi), OHMS * (b + bi)]);
};

function bySeriesResistor(normal: () => number, models?: Models): Fit {
  const ratios = (through: (hz: number) => Complex) =>
    ratiosOf({ before: reading(() => [1, 0], normal), behind: reading(through, normal) });
  const rig = { gain: ratios(() => [1, 0]), open: ratios(behind(false)) };
  const points = impedanceBehind(ratios(behind(true)), Float64Array.from(TONES_HZ), OHMS, rig);
  return fitImpedance(tableOf(points), { resistance: meterReading(normal), models });
}

function peakOf(coil: Fit["coil"]) {
  const hz = peakHz(coil, { resistance: Number.POSITIVE_INFINITY, capacitance: 0 }, "impedance");
  const { re, im } = coilImpedance(coil, hz);
  return { hz, ohms: Math.hypot(re, im) };
}

const HENRIES = COIL.inductance + COIL.loss[0]!.inductance;
const PEAK = peakOf(COIL);

describe.each([
  ["two loads", byTwoLoads],
  ["a resistor of 470 kΩ", bySeriesResistor],
])("a coil measured many times by %s, through hiss at −90 dB", (_, measure) => {
  const normal = createNormal(23);
  const fits = Array.from({ length: TRIALS }, () => measure(normal, ["one-section"]));

  it("is found to have a section by itself", () => expect(measure(normal).loss).toContain("section"));

  it("has its inductance and resonance within 1 % and the resonance's height within 5 % every time", () => {
    for (const { coil, lowFrequencyInductance } of fits) {
      const { hz, ohms } = peakOf(coil);
      expect(Math.abs(lowFrequencyInductance.value / HENRIES - 1)).toBeLessThan(0.01);
      expect(Math.abs(hz / PEAK.hz - 1)).toBeLessThan(0.01);
      expect(Math.abs(ohms / PEAK.ohms - 1)).toBeLessThan(0.05);
    }
  });

  it("has the true values in its ranges of 95 % as often as they promise", () => {
    const truth: Record<string, number> = { ...namedValues(COIL), lowFrequencyInductance: HENRIES };
    const inside = new Map<string, number>();
    for (const { values, lowFrequencyInductance } of fits) {
      const told: readonly FittedValue[] = [...values, lowFrequencyInductance];
      for (const { name, low, high } of told.filter(({ name }) => name in truth))
        inside.set(name, (inside.get(name) ?? 0) + (low <= truth[name]! && truth[name]! <= high ? 1 : 0));
    }
    expect([...inside.keys()].sort()).toEqual(Object.keys(truth).sort());
    for (const [name, count] of inside) expect(count, name).toBeGreaterThanOrEqual(LEAST_INSIDE);
  });
});
