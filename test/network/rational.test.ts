import { describe, expect, test } from "vitest";
import { emptyParts, evaluate, partsInto, type Rational } from "../../src/network/rational.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { levelAndPhaseOf } from "../../src/response/level-and-phase.ts";

const frequencies = logSpaced(20, 20_000, 40);
const lowPass: Rational = { numerator: Float64Array.of(1, 0), denominator: Float64Array.of(1, 1), omega0: 6000 };
const other: Rational = {
  numerator: Float64Array.of(7, -3, 2, 5),
  denominator: Float64Array.of(5, 1, 1, 9),
  omega0: 8000,
};

const partsOf = (rational: Rational) => partsInto(emptyParts(frequencies.length), rational, frequencies);

describe("what a caller holds of a rational", () => {
  test("stays as it is whatever others ask for afterwards", () => {
    const parts = partsInto(emptyParts(frequencies.length), lowPass, frequencies);
    const values = evaluate(lowPass, frequencies);
    const curve = levelAndPhaseOf(partsOf(lowPass), frequencies.length);
    const before = structuredClone({ parts, values, curve });
    evaluate(other, frequencies);
    levelAndPhaseOf(partsOf(other), frequencies.length);
    partsInto(emptyParts(frequencies.length), other, frequencies);
    expect({ parts, values, curve }).toEqual(before);
  });

  test("is right after a longer list, and in room that was too short", () => {
    evaluate(other, logSpaced(20, 20_000, 500));
    const { re, im } = evaluate(lowPass, frequencies);
    const { nRe, nIm, dRe, dIm } = partsInto(emptyParts(3), lowPass, frequencies);
    for (const [i, hertz] of frequencies.entries()) {
      // 1/(1 + jx), the low-pass of one resistor and one capacitor.
      const x = (2 * Math.PI * hertz) / 6000;
      expect(re[i]).toBeCloseTo(1 / (1 + x * x), 12);
      expect(im[i]).toBeCloseTo(-x / (1 + x * x), 12);
      expect([nRe[i], nIm[i], dRe[i]]).toEqual([1, 0, 1]);
      expect(dIm[i]).toBeCloseTo(x, 12);
    }
  });
});
