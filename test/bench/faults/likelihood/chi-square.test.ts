import { describe, expect, it } from "vitest";
import { chiSquareTail } from "../../../../src/bench/faults/likelihood/chi-square.ts";

// Critical values as tabled in the NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4 (three decimals).
describe("chiSquareTail", () => {
  it.each([
    [3.841, 1, 0.05],
    [10.828, 1, 0.001],
    [5.991, 2, 0.05],
    [11.07, 5, 0.05],
    [18.307, 10, 0.05],
    [23.209, 10, 0.01],
    [124.342, 100, 0.05],
    [149.449, 100, 0.001],
    [2.706, 1, 0.1],
  ])("is the published tail of %f with %i degrees of freedom: %f", (chiSquare, degrees, tail) => {
    expect(Math.abs(chiSquareTail(chiSquare, degrees) / tail - 1)).toBeLessThan(1e-3);
  });

  it("is e^(−x/2) with two degrees of freedom, however far out", () => {
    for (const x of [1e-9, 0.1, 1, 3.9, 4.1, 30, 300, 1400])
      expect(Math.abs(Math.log(chiSquareTail(x, 2)) + x / 2)).toBeLessThan(1e-9 * (1 + x));
  });

  it("is 1 where nothing was tested, and 0 where nothing could be further off", () => {
    expect(chiSquareTail(5, 0)).toBe(1);
    expect(chiSquareTail(0, 7)).toBe(1);
    expect(chiSquareTail(1e300, 7)).toBe(0);
  });
});
