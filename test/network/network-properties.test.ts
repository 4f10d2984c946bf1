import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Spectrum, solveTransfers } from "../../src/network/nodal-analysis.ts";
import { ParametricNetwork, weightedRational } from "../../src/network/parametric.ts";
import { assemblePencil } from "../../src/network/pencil.ts";
import { evaluate } from "../../src/network/rational.ts";
import { NODE_COUNT, networkOf, type RandomElement, randomElements } from "./random-networks.ts";

const frequencies = Float64Array.of(20, 110, 440, 1500, 4200, 12_000, 20_000);

function solve(elements: readonly RandomElement[], output: number, options = {}): Spectrum[] {
  return solveTransfers(assemblePencil(networkOf(elements, options)), output, frequencies);
}

function expectEqual(a: Spectrum, b: Spectrum, relative: number, scaleB = 1): void {
  for (let i = 0; i < a.re.length; i++) {
    const size = Math.hypot(a.re[i]!, a.im[i]!);
    const error = Math.hypot(a.re[i]! - scaleB * b.re[i]!, a.im[i]! - scaleB * b.im[i]!);
    expect(error).toBeLessThanOrEqual(relative * size + 1e-11);
  }
}

describe("any linear network", () => {
  test("is reciprocal: the current in branch 2 for an EMF in branch 1 is the current in 1 for an EMF in 2", () => {
    fc.assert(
      fc.property(randomElements(), (elements) => {
        const [atTwoFromOne] = solve(elements, 2);
        const [, atOneFromTwo] = solve(elements, 1);
        // Both branches have the same resistance, so equal voltages across them mean equal currents.
        expectEqual(atTwoFromOne!, atOneFromTwo!, 1e-8);
      }),
    );
  });

  test("gives no gain where every element is a resistor", () => {
    fc.assert(
      fc.property(randomElements(["resistor"]), fc.integer({ min: 1, max: NODE_COUNT - 1 }), (elements, output) => {
        const [one, two] = solve(elements, output);
        for (const { re, im } of [one!, two!]) {
          expect(Math.max(...re)).toBeLessThanOrEqual(1 + 1e-9);
          expect(Math.min(...re)).toBeGreaterThanOrEqual(-1e-9);
          expect(Math.max(...im.map(Math.abs))).toBeLessThan(1e-9);
        }
      }),
    );
  });

  test("keeps its transfers when every impedance is scaled alike", () => {
    fc.assert(
      fc.property(randomElements(), fc.double({ min: 0.01, max: 100, noNaN: true }), (elements, impedanceScale) => {
        const plain = solve(elements, 3);
        const scaled = solve(elements, 3, { impedanceScale });
        for (const [source, spectrum] of plain.entries()) expectEqual(spectrum, scaled[source]!, 1e-7);
      }),
    );
  });

  test("keeps its transfers when its nodes other than the reference are numbered anew", () => {
    const labels = fc.shuffledSubarray([1, 2, 3, 4, 5], { minLength: 5, maxLength: 5 }).map((order) => [0, ...order]);
    fc.assert(
      fc.property(randomElements(), labels, (elements, relabel) => {
        const plain = solve(elements, 3);
        const renamed = solve(elements, relabel[3]!, { relabel });
        for (const [source, spectrum] of plain.entries()) expectEqual(spectrum, renamed[source]!, 1e-7);
      }),
    );
  });

  test("is finite however its parts hang together", () => {
    fc.assert(
      fc.property(randomElements(), fc.integer({ min: 0, max: NODE_COUNT - 1 }), (elements, output) => {
        for (const { re, im } of solve(elements, output)) {
          expect([...re, ...im].every(Number.isFinite)).toBe(true);
        }
      }),
    );
  });

  test("has the same transfers from polynomials as frequency by frequency, wherever polynomials are offered", () => {
    let offered = 0;
    fc.assert(
      fc.property(randomElements(), (elements) => {
        const network = networkOf(elements);
        const rational = new ParametricNetwork(network, 3).transfersAt([]);
        if (!rational) return;
        offered++;
        const solved = solve(elements, 3);
        for (const [source, spectrum] of solved.entries()) {
          const weights = [0, 0].map((_, index) => (index === source ? 1 : 0));
          const total = weightedRational(rational, weights);
          const silent = { re: new Float64Array(frequencies.length), im: new Float64Array(frequencies.length) };
          expectEqual(spectrum, total ? evaluate(total, frequencies) : silent, 1e-5);
        }
      }),
      { numRuns: 500 },
    );
    expect(offered).toBeGreaterThan(250);
  });
});
