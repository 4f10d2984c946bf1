import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type CoilPlace,
  coilWeight,
  distanceUnder,
  partialFrequencyHz,
  partialNumberAt,
  pluckWeight,
  stringWeight,
} from "../../src/strings/comb.ts";
import { countPartials } from "../../src/strings/partials.ts";
import { planeModes } from "../../src/strings/planes.ts";
import { type SoundingString, soundingString, usualStringSet } from "../../src/strings/string-set.ts";
import { strokeOf } from "../../src/strings/stroke.ts";

const POINT: CoilPlace = { distanceMetres: 0.1, apertureMetres: 0, sign: 1, output: 1 };
const ideal = (lengthMetres: number): SoundingString => ({
  number: 1,
  count: 6,
  lengthMetres,
  fundamentalHz: 110,
  inharmonicity: 0,
  decay: { support: 0.5, wire: 1.2, bending: 0.25 },
  wound: true,
  level: 1,
});

const anyString = fc
  .record({ number: fc.integer({ min: 1, max: 6 }), fret: fc.integer({ min: 0, max: 24 }) })
  .map(({ number, fret }) => soundingString(usualStringSet(), number, fret));
const anyCoil = fc.record({
  distanceMetres: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
  apertureMetres: fc.double({ min: 0, max: 0.04, noNaN: true }),
  sign: fc.constantFrom<1 | -1>(1, -1),
  output: fc.double({ min: 0, max: 3, noNaN: true }),
  slantMetres: fc.double({ min: -0.02, max: 0.02, noNaN: true }),
});

describe("a coil's comb", () => {
  test("loses partials 4, 8, 12 and 16 at a quarter of the string (forum post on the guitar's signal)", () => {
    const weights = Array.from({ length: 19 }, (_, i) =>
      coilWeight(ideal(0.648), { ...POINT, distanceMetres: 0.162 }, i + 1),
    );
    const lost = weights.flatMap((weight, i) => (Math.abs(weight) < 1e-12 ? [i + 1] : []));
    expect(lost).toEqual([4, 8, 12, 16]);
  });

  test("has its minima at 4, 8, 13, 17, 21, 25, 29, 34 and 38 for 153.99 mm of 647.7 mm, from sin(nπx/L) worked out apart", () => {
    const coil = { ...POINT, distanceMetres: 0.15399 };
    const weights = Array.from({ length: 41 }, (_, n) => Math.abs(coilWeight(ideal(0.6477), coil, n)));
    const minima = weights.flatMap((w, n) => (n > 0 && w < weights[n - 1]! && w < (weights[n + 1] ?? 0) ? [n] : []));
    expect(minima).toEqual([4, 8, 13, 17, 21, 25, 29, 34, 38]);
  });

  test("averages sin(nπz/L) over the aperture, as a sum of many points does", () => {
    const string = ideal(0.648);
    for (const n of [1, 7, 40, 90]) {
      const points = Array.from({ length: 4000 }, (_, i) => 0.09 + (0.02 * (i + 0.5)) / 4000);
      const sum = points.reduce((total, z) => total + Math.sin((n * Math.PI * z) / 0.648), 0) / points.length;
      expect(coilWeight(string, { ...POINT, apertureMetres: 0.02 }, n)).toBeCloseTo(sum, 6);
    }
  });

  test("hears nothing of a string stopped between the coil and the bridge", () => {
    const coil = { ...POINT, distanceMetres: 0.18, apertureMetres: 0.012 };
    const string = soundingString(usualStringSet(), 1, 24);
    expect(string.lengthMetres).toBeCloseTo(0.162, 6);
    expect(coilWeight(string, coil, 3)).toBe(0);
  });

  test("hears only the moving half of a window that the fret cuts in two", () => {
    const string = ideal(0.1);
    const whole = coilWeight(string, { ...POINT, distanceMetres: 0.095, apertureMetres: 0.01 }, 1);
    const cut = coilWeight(string, { ...POINT, distanceMetres: 0.1, apertureMetres: 0.02 }, 1);
    expect(cut).toBeCloseTo(whole / 2, 12);
  });

  test("is nearer the bridge under string 1 and farther under string 6 on a slanted coil, by the slant in all", () => {
    const coil = { ...POINT, slantMetres: 0.01 };
    const distances = [1, 2, 6].map((number) => distanceUnder({ ...ideal(0.648), number }, coil));
    expect(distances[0]).toBeCloseTo(0.095, 12);
    expect(distances[1]).toBeCloseTo(0.097, 12);
    expect(distances[2]).toBeCloseTo(0.105, 12);
  });

  test("is finite, within its output, turned by its sign and in proportion to its output, whatever the place", () => {
    fc.assert(
      fc.property(anyString, anyCoil, fc.double({ min: 1, max: 20_000, noNaN: true }), (string, coil, hertz) => {
        const weight = stringWeight(string, coil, hertz);
        // Above it by rounding alone, which among the smallest numbers there are is a whole step.
        expect(Math.abs(weight)).toBeLessThanOrEqual(coil.output * (1 + 1e-12) + 1e-300);
        expect(stringWeight(string, { ...coil, sign: coil.sign === 1 ? -1 : 1 }, hertz)).toBeCloseTo(-weight, 15);
        expect(stringWeight(string, { ...coil, output: 2 * coil.output }, hertz)).toBeCloseTo(2 * weight, 14);
      }),
    );
  });
});

describe("the comb between partials", () => {
  test("passes through every partial's own weight", () => {
    fc.assert(
      fc.property(anyString, anyCoil, fc.integer({ min: 1, max: 60 }), (string, coil, n) => {
        const hertz = partialFrequencyHz(string, n);
        expect(partialNumberAt(string, hertz)).toBeCloseTo(n, 9);
        expect(stringWeight(string, coil, hertz)).toBeCloseTo(coilWeight(string, coil, n), 8);
      }),
    );
  });

  test("falls silent where x is a whole number of half waves, and is loudest halfway", () => {
    const coil = { ...POINT, distanceMetres: 0.162 };
    expect(stringWeight(ideal(0.648), coil, 440)).toBeCloseTo(0, 12);
    expect(stringWeight(ideal(0.648), coil, 220)).toBeCloseTo(1, 12);
    expect(stringWeight(ideal(0.648), coil, 660)).toBeCloseTo(-1, 12);
  });
});

describe("a pluck", () => {
  const pluck = { placeMetres: 0.13, widthMetres: 0.003 };

  test("in the middle starts no even partial", () => {
    const middle = { ...pluck, placeMetres: 0.324 };
    expect(pluckWeight(ideal(0.648), middle, 2)).toBeCloseTo(0, 12);
    expect(pluckWeight(ideal(0.648), middle, 1)).toBeCloseTo(1, 3);
  });

  test("gives partials that stay under the limit asked for and under 20 kHz, with decay that grows", () => {
    const string = soundingString(usualStringSet(), 6, 0);
    // 48·82.41·√(1 + 2.567e-4·48²) = 4990 Hz, and the 49th is at 5134 Hz.
    expect(countPartials(string, 5000)).toBe(48);
    const all = countPartials(string, Number.POSITIVE_INFINITY);
    expect(partialFrequencyHz(string, all)).toBeLessThanOrEqual(20_000);
    expect(partialFrequencyHz(string, all + 1)).toBeGreaterThan(20_000);
    const decays = Array.from(
      { length: all },
      (_, i) => planeModes(string, strokeOf({}, string), i + 1)[0]!.decayPerSecond,
    );
    for (let i = 1; i < all; i += 1) expect(decays[i]).toBeGreaterThan(decays[i - 1]!);
  });
});
