import fc from "fast-check";
import { expect, test } from "vitest";
import { amplitudeFromDecibels, decibels, powerDecibels, powerFromDecibels, SILENCE_DB } from "../src/decibels.ts";

test("a tenfold amplitude is 20 dB, a tenfold power 10 dB, and their halves 6.0206 and 3.0103 dB less", () => {
  expect(decibels(10)).toBeCloseTo(20, 12);
  expect(powerDecibels(10)).toBeCloseTo(10, 12);
  expect(decibels(0.5)).toBeCloseTo(-6.0206, 4);
  expect(powerDecibels(0.5)).toBeCloseTo(-3.0103, 4);
});

test("levels come back from the amplitude and the power that they stand for", () => {
  fc.assert(
    fc.property(fc.double({ min: -199, max: 290, noNaN: true }), (level) => {
      expect(decibels(amplitudeFromDecibels(level))).toBeCloseTo(level, 9);
      expect(powerDecibels(powerFromDecibels(level))).toBeCloseTo(level, 9);
    }),
  );
});

test("nothing, and what is under -200 dB, is silence of -300 dB by either measure", () => {
  expect([decibels(0), decibels(0.99e-10), powerDecibels(0), powerDecibels(0.99e-20)]).toEqual(
    Array(4).fill(SILENCE_DB),
  );
});
