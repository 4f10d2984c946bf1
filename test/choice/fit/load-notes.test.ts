import { describe, expect, it } from "vitest";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import type { Across } from "../../../src/choice/fit/coil-model.ts";
import { runFit } from "../../../src/choice/fit/fit-job.ts";
import { fitTwoLoads } from "../../../src/choice/fit/fit-two-loads.ts";
import type { RatioSweep } from "../../../src/choice/fit/loaded-ratio.ts";
import { casesOf, thoroughly } from "../../effort.ts";
import { LOADS, MEASURED_COILS, ratiosOf } from "../../measured/measured-coils.ts";
import { createNormal, KNOWN_COILS, noisyRatio } from "./known-coils.ts";

const { coil, loss } = KNOWN_COILS["single coil"]!;
const across = { resistance: 1e6, capacitance: 20e-12 };
const known = { across, resistance: { ohms: coil.resistance, precision: 0.005 }, models: [loss] };
const normal = createNormal(19);
const sweepOf = (load: Across): RatioSweep => noisyRatio(coil, { load, across, noise: 0.002, offsetDb: 0.2, normal });
const [R, C] = [sweepOf(LOADS.R), sweepOf(LOADS.C)];
const told = (sweep: RatioSweep, load: Across): RatioSweep => ({ ...sweep, load });
const notesOf = (...sweeps: RatioSweep[]) =>
  runFit({ method: "two-loads", sweeps, known }, NO_CHECKPOINT).notes.join(" ");

describe("one load is taken as told", () => {
  it("and the answer says what an error in each of its parts is worth, as a fit with the part off finds it", () => {
    const found = notesOf(R).match(
      /taken as told.*1 % of error in its resistance is ([\d.]+) %, and .* capacitance is ([\d.]+) %/,
    )!;
    const henriesOf = (load: Across) => fitTwoLoads([told(R, load)], known).lowFrequencyInductance.value;
    const worth = (off: Across) => 100 * Math.abs(henriesOf(off) / henriesOf(LOADS.R) - 1);
    expect(Math.abs(worth({ ...LOADS.R, resistance: 1.01 * LOADS.R.resistance }) - Number(found[1]))).toBeLessThan(0.1);
    expect(Math.abs(worth({ ...LOADS.R, capacitance: 1.01 * LOADS.R.capacitance }) - Number(found[2]))).toBeLessThan(
      0.1,
    );
  });

  it("a capacitor alone by its capacitance: the ratio has only their product in it", () => {
    const found = notesOf(C).match(/1 % of error in its capacitance is ([\d.]+) % of the inductance/)!;
    expect(Number(found[1])).toBeGreaterThan(0.8);
    expect(notesOf(C)).not.toContain("its resistance is");
  });
});

describe("two loads are held to each other", () => {
  it("and nothing is said where both are as told", () => expect(notesOf(R, C)).not.toContain("two loads"));

  const wrong: [number, string][] = [
    [1.1, "less"],
    [0.9, "more"],
  ];
  it.each(casesOf(wrong, 1))("and it is said where the second was told by %d of its value", (factor, way) => {
    const off = { ...LOADS.C, capacitance: factor * LOADS.C.capacitance };
    const found = notesOf(R, told(C, off)).match(/the second seems to draw some (\d+) % (\w+) current than as told/)!;
    expect(found[2]).toBe(way);
    expect(Math.abs(Number(found[1]) - 10)).toBeLessThan(3);
  });

  thoroughly("by a real coil, whose own form is never quite the circuit's", () => {
    const real = MEASURED_COILS.find(({ name }) => name === "01f8d06")!;
    const sweeps = (["R", "C"] as const).map((load) => ({ ...ratiosOf(real.name, load), load: LOADS[load] }));
    const job = (capacitance: number) =>
      runFit(
        {
          method: "two-loads",
          sweeps: [sweeps[0]!, { ...sweeps[1]!, load: { ...LOADS.C, capacitance } }],
          known: { across: { resistance: 1e6, capacitance: 0 }, models: ["one-section"] },
        },
        NO_CHECKPOINT,
      ).notes.join(" ");
    expect(job(LOADS.C.capacitance)).not.toContain("two loads");
    expect(job(1.1 * LOADS.C.capacitance)).toMatch(/the second seems to draw some \d+ % less/);
  });
});
