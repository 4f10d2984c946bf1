import { describe, expect, it } from "vitest";
import { type CoilReading, coilOhms, expectedOhms } from "../../../src/bench/leads/coil-ohms.ts";
import { COIL_LN_DEVIATION, COIL_LN_OHMS, COIL_RATIOS, MISREAD_READING } from "../../../src/bench/leads/priors.ts";

const reading = (between: CoilReading["between"], ohms: number): CoilReading => ({
  between,
  lnOhms: Math.log(ohms),
  deviation: 0.01,
});

const density = (x: number, mean: number, deviation: number) =>
  Math.exp(-0.5 * ((x - mean) / deviation) ** 2) / (deviation * Math.sqrt(2 * Math.PI));

/** The integral over both coils' ln ohms by the midpoint rule, written from the definition. */
function integrated(readings: readonly CoilReading[]): number {
  let sum = 0;
  const [width, height] = [0.008, 0.008];
  for (const { weight, deviation } of COIL_RATIOS)
    for (let m = Math.log(1500); m < Math.log(15000); m += width)
      for (let d = -2; d < 2; d += height) {
        const [first, second] = [Math.exp(m + d / 2), Math.exp(m - d / 2)];
        const seen = {
          first,
          second,
          sum: first + second,
          "side by side": 1 / (1 / first + 1 / second),
        };
        const chance = readings.reduce(
          (all, each) =>
            all * (1 - MISREAD_READING) * density(each.lnOhms, Math.log(seen[each.between]), each.deviation),
          1,
        );
        sum +=
          weight * density(m, COIL_LN_OHMS, COIL_LN_DEVIATION) * density(d, 0, deviation) * chance * width * height;
      }
  return Math.log(sum);
}

describe("what readings say of two coils", () => {
  it.each([
    ["one coil alone", [reading("first", 4100)]],
    ["both coils", [reading("first", 4100), reading("second", 4200)]],
    ["both in a row", [reading("sum", 8200)]],
    ["one, and both in a row, wound unlike", [reading("first", 3000), reading("sum", 8200)]],
    ["both side by side", [reading("side by side", 2050)]],
  ] as const)("agrees with the integral by the midpoint rule: %s", (_, readings) => {
    // Laplace's method is off by the bend of the sum alone, which wide priors show most.
    expect(coilOhms(readings, 2).lnEvidence).toBeCloseTo(integrated(readings), 1);
  });

  it("finds the other coil from one and both in a row, as by subtraction", () => {
    const ohms = coilOhms([reading("first", 3000), reading("sum", 8200)], 2);
    expect(Math.exp(expectedOhms(ohms, "second", 2).lnOhms) / 5200).toBeCloseTo(1, 2);
    // 1 % of 8200 and of 3000, over 5200.
    expect(expectedOhms(ohms, "second", 2).deviation).toBeCloseTo(Math.hypot(82, 30) / 5200, 3);
  });

  it("takes one of three readings that contradict each other for a slip, the one that fits none", () => {
    const ohms = coilOhms([reading("first", 4100), reading("first", 4120), reading("first", 410)], 2);
    expect(ohms.missed).toEqual([2]);
    expect(Math.exp(expectedOhms(ohms, "first", 2).lnOhms)).toBeCloseTo(4110, -2);
  });
});
