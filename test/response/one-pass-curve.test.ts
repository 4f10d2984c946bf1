import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { emptyParts, evaluate, partsInto } from "../../src/network/rational.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { levelAndPhaseOf, magnitudeDb, unwrappedPhaseDegrees } from "../../src/response/level-and-phase.ts";

const coefficient = fc.double({ min: -4, max: 4, noNaN: true });

describe("level and phase in one pass", () => {
  test("equal those of the values themselves, for polynomials of any length and sharp resonances", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 16 }).chain((length) =>
          fc.tuple(
            fc.array(coefficient, { minLength: length, maxLength: length }),
            fc.array(coefficient, { minLength: length, maxLength: length }),
            // Of both, which changes nothing. Polynomials of a network come with a denominator of about 1.
            fc.integer({ min: -15, max: 15 }).map((exponent) => 10 ** exponent),
          ),
        ),
        ([above, below, scale]) => {
          const rational = {
            numerator: Float64Array.from(above, (value) => scale * value),
            denominator: Float64Array.from(below, (value, k) => scale * (k === 0 ? 1 + Math.abs(value) : value)),
            omega0: 2 * Math.PI * 3000,
          };
          const frequencies = logSpaced(20, 20_000, 512);
          const values = evaluate(rational, frequencies);
          const { magnitude, phase } = levelAndPhaseOf(
            partsInto(emptyParts(512), rational, frequencies),
            frequencies.length,
          );
          const level = magnitudeDb(values);
          const turned = unwrappedPhaseDegrees(values);
          for (let i = 0; i < level.length; i++) {
            if (level[i]! < -250) continue;
            const [off, turn] = [Math.abs(magnitude[i]! - level[i]!), Math.abs(phase[i]! - turned[i]!) % 360];
            if (!(off < 1e-6)) expect(off).toBeLessThan(1e-6);
            if (!(turn < 1e-5)) expect(turn).toBeLessThan(1e-5);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});
