import { describe, expect, it } from "vitest";
import { type Across, coilImpedance } from "../../../../src/choice/fit/coil-model.ts";
import { peakHz } from "../../../../src/choice/fit/resonance-peak.ts";
import type { FittedAnswer } from "../../../../src/contract/fit.ts";
import { measureRequestSchema } from "../../../../src/contract/measure/measure.ts";
import type { CoilValues } from "../../../../src/response/coil-ladder.ts";
import { measureJob } from "../../../../src/server/jobs/measure/measure.ts";
import { createNormal, namedValues } from "../../../choice/fit/known-coils.ts";
import { type Bench, LEAD_INPUT, OHMS, recorder } from "../../../measure/recorded-coils.ts";
import { COIL, LOAD } from "../../../measure/simulated-pickup.ts";

const SINGLE = { resistance: 6000, inductance: 2.4, capacitance: 110e-12, loss: 700e3 };
const WIDE = {
  resistance: 8200,
  inductance: 5.2,
  capacitance: 120e-12,
  loss: [{ resistance: 22e3, inductance: 1.4 }],
};

const BENCHES: readonly (Bench & { readonly trials: number })[] = (
  [
    ["a humbucker by a sweep in 24 bits", "two-loads", COIL, "one-section", "sweep", 48_000, 24, 50],
    ["a single coil by a sweep in 16 bits", "two-loads", SINGLE, "resistor", "sweep", 44_100, 16, 50],
    ["a wide single coil by tones in 24 bits", "two-loads", WIDE, "one-section", "multitone", 44_100, 24, 50],
    ["a humbucker by tones in 24 bits", "series-resistor", COIL, "one-section", "multitone", 48_000, 24, 17],
    ["a single coil by tones in 16 bits", "series-resistor", SINGLE, "resistor", "multitone", 44_100, 16, 17],
    ["a wide single coil by a sweep in 16 bits", "series-resistor", WIDE, "one-section", "sweep", 44_100, 16, 16],
  ] as const
).map(([name, method, coil, loss, signal, rateHz, bits, trials]) => ({
  name,
  method,
  coil,
  loss,
  signal,
  rateHz,
  bits,
  trials,
}));

const requestOf = ({ method, signal, loss }: Bench, resistance: number) =>
  method === "two-loads"
    ? { method, signal, load: LOAD, across: LEAD_INPUT, loss, resistance }
    : { method, signal, part: "coil", resistor: OHMS, loss, resistance };

function fitOf(bench: Bench, files: Record<string, Uint8Array>, resistance: number): FittedAnswer {
  const job = measureJob.read(measureRequestSchema.parse(requestOf(bench, resistance)), files);
  return (measureJob.run(job, { checkpoint: () => {} }) as { fit: FittedAnswer }).fit;
}

const NOTHING: Across = { resistance: Number.POSITIVE_INFINITY, capacitance: 0 };

/** Where its impedance is highest, and that over the width at half its power. */
function resonanceOf(coil: CoilValues): { hz: number; quality: number } {
  const size = (hz: number) => Math.hypot(...Object.values(coilImpedance(coil, hz)));
  const hz = peakHz(coil, NOTHING, "impedance");
  const half = size(hz) / Math.SQRT2;
  const edge = (direction: 1 | -1) => {
    let [inner, outer] = [0, 2];
    for (let step = 0; step < 40; step += 1) {
      const octaves = (inner + outer) / 2;
      if (size(hz * 2 ** (direction * octaves)) > half) inner = octaves;
      else outer = octaves;
    }
    return hz * 2 ** (direction * inner);
  };
  return { hz, quality: hz / (edge(1) - edge(-1)) };
}

const henriesOf = ({ inductance, loss }: CoilValues) =>
  inductance + (Array.isArray(loss) ? loss.reduce((sum, each) => sum + (each.inductance ?? 0), 0) : 0);

const off = (found: number, truth: number) => Math.abs(found / truth - 1);

interface Count {
  told: number;
  inside: number;
}

/** By the name of a value. */
const counts = new Map<string, Count>();
const worst = { inductance: 0, resonance: 0, quality: 0 };
const normal = createNormal(41);

/** All that a trial tells. */
function tally(name: string, isInside: boolean): void {
  const count = counts.get(name) ?? { told: 0, inside: 0 };
  counts.set(name, { told: count.told + 1, inside: count.inside + (isInside ? 1 : 0) });
}

function trial(bench: Bench, files: Record<string, Uint8Array>): void {
  // As a meter reads it, to half a per cent.
  const fit = fitOf(bench, files, bench.coil.resistance * (1 + 0.005 * normal()));
  const truth: Record<string, number> = { ...namedValues(bench.coil), lowFrequencyInductance: henriesOf(bench.coil) };
  const told = [...fit.values, fit.lowFrequencyInductance];
  expect(told.map(({ name }) => name).sort()).toEqual(Object.keys(truth).sort());
  for (const { name, value, relativeError, low, high } of told) {
    tally(name, low <= truth[name]! && truth[name]! <= high);
    expect(relativeError, name).toBeLessThan(name === "loss" ? 0.05 : 0.02);
    expect(off(value, truth[name]!), name).toBeLessThan(4.5 * relativeError);
  }
  const [found, exact] = [resonanceOf(fit.coil as CoilValues), resonanceOf(bench.coil)];
  worst.inductance = Math.max(worst.inductance, off(fit.lowFrequencyInductance.value, truth.lowFrequencyInductance!));
  worst.resonance = Math.max(worst.resonance, off(found.hz, exact.hz));
  worst.quality = Math.max(worst.quality, off(found.quality, exact.quality));
}

describe("coils from whole recordings, through hiss at −90 dB, hum, another clock and rounding to bits", () => {
  it.each(BENCHES)("$method: $name, $trials times", { timeout: 1_200_000 }, (bench) => {
    const record = recorder(bench);
    for (let index = 0; index < bench.trials; index += 1) trial(bench, record(1000 * index + 1));
  });

  it("have the inductance within 1 %, the resonance within 1 % and its Q within 5 % in every one", () => {
    expect(counts.get("lowFrequencyInductance")!.told).toBe(BENCHES.reduce((sum, { trials }) => sum + trials, 0));
    expect(worst.inductance).toBeLessThan(0.01);
    expect(worst.resonance).toBeLessThan(0.01);
    expect(worst.quality).toBeLessThan(0.05);
  });

  it("have the true values in their ranges of 95 % as often as promised", () => {
    for (const [name, { told, inside }] of counts) {
      // Four standard deviations of the binomial distribution under 95 %: one list in thirty thousand lies lower.
      const least = 0.95 * told - 4 * Math.sqrt(0.95 * 0.05 * told);
      expect(inside, `${name}: ${inside} of ${told}`).toBeGreaterThanOrEqual(least);
    }
    // A trial's ranges go together, those by two loads all six with the meter's error: 200 trials tell their share to 1.5 %.
    const all = [...counts.values()];
    const share = all.reduce((sum, { inside }) => sum + inside, 0) / all.reduce((sum, { told }) => sum + told, 0);
    expect(share).toBeGreaterThan(0.935);
    // Ranges that always hold the truth would be no standard errors at all.
    expect(share).toBeLessThan(0.985);
  });
});
