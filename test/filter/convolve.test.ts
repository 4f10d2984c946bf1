import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createConvolver } from "../../src/filter/convolve.ts";
import { createQuickConvolver } from "../../src/filter/quick-convolve.ts";
import { noise } from "./noise.ts";

function directSum(inputs: readonly Float32Array[], filters: readonly Float64Array[]): Float64Array {
  const length = Math.max(...inputs.map((x) => x.length)) + Math.max(...filters.map((h) => h.length)) - 1;
  const output = new Float64Array(length);
  inputs.forEach((input, i) => {
    const filter = filters[i]!;
    for (let n = 0; n < input.length; n++)
      for (let m = 0; m < filter.length; m++) output[n + m]! += input[n]! * filter[m]!;
  });
  return output;
}

function expectNear(actual: Float32Array, wanted: ArrayLike<number>, tolerance: number): void {
  expect(actual.length).toBe(wanted.length);
  const scale = Array.from(wanted).reduce((most, value) => Math.max(most, Math.abs(value)), 1);
  let worst = 0;
  for (let n = 0; n < wanted.length; n++) worst = Math.max(worst, Math.abs(actual[n]! - wanted[n]!));
  expect(worst / scale).toBeLessThan(tolerance);
}

const shapes = fc.record({
  inputs: fc.array(fc.integer({ min: 1, max: 2500 }), { minLength: 1, maxLength: 4 }),
  taps: fc.array(fc.integer({ min: 1, max: 300 }), { minLength: 4, maxLength: 4 }),
  spare: fc.integer({ min: 0, max: 200 }),
  seed: fc.integer({ min: 1, max: 1e6 }),
  memoryBytes: fc.constantFrom(0, 2 ** 30),
});

describe.each([
  // Half a step of a float32 at the largest value.
  ["createConvolver", createConvolver, 6.1e-8],
  // Some ten roundings to 24 bits, one each pass of the transform.
  ["createQuickConvolver", createQuickConvolver, 1e-6],
])("%s", (_, create, tolerance) => {
  it("gives the sum of the direct convolutions for any lengths, spectra kept or not", () => {
    fc.assert(
      fc.property(shapes, ({ inputs, taps, spare, seed, memoryBytes }) => {
        const signals = inputs.map((length, i) => noise(length, seed + i));
        const filters = inputs.map((_, i) => Float64Array.from(noise(taps[i]!, seed + 50 + i)));
        const longest = Math.max(...filters.map((filter) => filter.length)) + spare;
        const convolver = create(signals, longest, { memoryBytes });
        expectNear(convolver.render(filters), directSum(signals, filters), tolerance);
      }),
      { numRuns: 60 },
    );
  });

  it("renders one set of filters after another without a trace of the first", () => {
    const signals = [noise(20_000, 7), noise(20_000, 8)];
    const convolver = create(signals, 900);
    const sets = [300, 900, 40].map((taps) => [
      Float64Array.from(noise(taps, taps)),
      Float64Array.from(noise(taps, taps + 1)),
    ]);
    for (const filters of sets) expectNear(convolver.render(filters), directSum(signals, filters), tolerance);
  });

  it("passes a single tap through unchanged", () => {
    const signal = noise(5000, 3);
    expectNear(create([signal], 1).render([Float64Array.of(1)]), signal, tolerance);
  });

  it("is linear in its filters", () => {
    const signal = noise(6000, 11);
    const [a, b] = [Float64Array.from(noise(500, 1)), Float64Array.from(noise(500, 2))];
    const convolver = create([signal], 500);
    const [ya, yb, sum] = [a, b, a.map((tap, n) => 2 * tap - 3 * b[n]!)].map((filter) => convolver.render([filter]));
    for (let n = 0; n < sum!.length; n++) expect(Math.abs(sum![n]! - 2 * ya![n]! + 3 * yb![n]!)).toBeLessThan(3e-5);
  });

  it("cancels equal coils of opposite sign to exact silence", () => {
    const signal = noise(30_000, 5);
    const filter = Float64Array.from(noise(700, 6));
    const output = create([signal, signal], 700).render([filter, filter.map((tap) => -tap)]);
    expect(output.every((sample) => sample === 0)).toBe(true);
  });

  it("gives exact silence for silence", () => {
    const output = create([new Float32Array(9000)], 512).render([Float64Array.from(noise(512, 4))]);
    expect(output.every((sample) => sample === 0)).toBe(true);
  });

  it("answers no sound before it comes", () => {
    const signal = new Float32Array(40_000);
    signal[25_000] = 1;
    const output = create([signal], 600).render([Float64Array.from(noise(600, 4))]);
    // Rounding within the block of the transform, 300 dB down.
    expect(Math.max(...output.subarray(0, 25_000).map(Math.abs))).toBeLessThan(1e-15);
    expect(Math.abs(output[25_000]!)).toBeGreaterThan(0);
  });

  it("stops when its checkpoint throws, while it makes ready and between blocks", () => {
    const signal = noise(50_000, 9);
    const filter = Float64Array.of(1, 2, 3);
    let calls = 0;
    const stop = () => {
      calls++;
      if (calls > 3) throw new Error("stopped");
    };
    expect(() => create([signal], 3).render([filter], { checkpoint: stop })).toThrow("stopped");
    expect(calls).toBe(4);
    expect(() => create([signal], 3, { checkpoint: stop }).render([filter])).toThrow("stopped");
  });

  it("refuses filters that do not fit its plan", () => {
    const convolver = create([noise(100, 1)], 8);
    expect(() => convolver.render([])).toThrow("1 inputs need as many filters, not 0");
    expect(() => convolver.render([new Float64Array(9)])).toThrow(
      "A filter of 9 taps is longer than the 8 planned for",
    );
    expect(() => convolver.render([new Float64Array(0)])).toThrow("at least one tap");
    expect(() => create([], 8)).toThrow(RangeError);
    expect(() => create([new Float32Array(1)], 0)).toThrow(RangeError);
  });
});
