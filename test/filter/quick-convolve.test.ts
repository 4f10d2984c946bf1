import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import { createConvolver } from "../../src/filter/convolve.ts";
import { impulseResponses } from "../../src/filter/impulse-response.ts";
import { pffft } from "../../src/filter/pffft.ts";
import { createQuickConvolver } from "../../src/filter/quick-convolve.ts";
import { coilWithTone, resonance } from "./circuits.ts";
import { noise } from "./noise.ts";

function energy(samples: Float32Array): number {
  return samples.reduce((sum, sample) => sum + sample * sample, 0);
}

/** The power of the difference from the double-precision sum, in dB re the powers that the inputs give one by one. */
function differenceDb(actual: Float32Array, inputs: readonly Float32Array[], filters: readonly Float64Array[]): number {
  const longest = Math.max(...filters.map((taps) => taps.length));
  const exact = createConvolver(inputs, longest).render(filters);
  expect(actual.length).toBe(exact.length);
  const alone = inputs.map((input, i) => energy(createConvolver([input], longest).render([filters[i]!])));
  const difference = energy(actual.map((sample, n) => sample - exact[n]!));
  return 10 * Math.log10(difference / alone.reduce((sum, power) => sum + power, 0));
}

/** Low and loud at first, dying away: as a string, and with the block's rounding set by its loudest part. */
function plucked(length: number, seed: number): Float32Array {
  const grain = noise(length, seed);
  return grain.map(
    (value, n) => (0.01 * value + Math.sin(0.012 * seed * n) + Math.sin(0.07 * n)) * Math.exp(-n / 30_000),
  );
}

describe("createQuickConvolver", () => {
  const shapes = fc.record({
    inputs: fc.array(fc.integer({ min: 1, max: 20_000 }), { minLength: 1, maxLength: 4 }),
    taps: fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 4, maxLength: 4 }),
    seed: fc.integer({ min: 1, max: 1e6 }),
    memoryBytes: fc.constantFrom(0, 2 ** 18, 2 ** 30),
  });

  it("is within -120 dB of double precision for any lengths, spectra kept or not", () => {
    fc.assert(
      fc.property(shapes, ({ inputs, taps, seed, memoryBytes }) => {
        const signals = inputs.map((length, i) => noise(length, seed + i));
        const filters = inputs.map((_, i) => Float64Array.from(noise(taps[i]!, seed + 50 + i)));
        const convolver = createQuickConvolver(signals, 5000, { memoryBytes });
        expect(differenceDb(convolver.render(filters), signals, filters)).toBeLessThan(-120);
        expect(differenceDb(convolver.render(filters), signals, filters)).toBeLessThan(-120);
      }),
      { numRuns: 40 },
    );
  });

  it.each([44_100, 96_000])("is within -120 dB through the filters of coils at %d Hz, out of phase too", (rate) => {
    const sets = [250e3, 40e3, 0].map((ohms) => [
      coilWithTone(ohms, 2.2),
      coilWithTone(ohms, 2.6, -0.97),
      resonance(4500, 3),
    ]);
    const inputs = [3, 4, 5].map((seed) => plucked(rate, seed));
    const filters = sets.map((set) => impulseResponses(set, rate).map(({ taps }) => taps));
    const convolver = createQuickConvolver(inputs, Math.max(...filters.flat().map((taps) => taps.length)));
    for (const set of filters) expect(differenceDb(convolver.render(set), inputs, set)).toBeLessThan(-120);
  });

  it("renders filters of very different lengths from one plan, in any order", () => {
    const inputs = [noise(60_000, 1), noise(40_000, 2)];
    const convolver = createQuickConvolver(inputs, 100_000);
    for (const taps of [90_000, 3, 700, 20_000, 1600, 3, 90_000]) {
      const filters = [Float64Array.from(noise(taps, 3)), Float64Array.from(noise(Math.ceil(taps / 2), 4))];
      expect(differenceDb(convolver.render(filters), inputs, filters)).toBeLessThan(-120);
    }
  });

  it("holds on to no more of the module's memory however many sounds it renders", () => {
    const sizes = [400, 3000, 150_000];
    const work = () => {
      for (const taps of sizes) {
        const filter = Float64Array.from(noise(taps, 9));
        createQuickConvolver([noise(5000, 8)], taps).render([filter]);
      }
    };
    work();
    const after = pffft!.HEAPF32.length;
    for (let i = 0; i < 12; i++) work();
    expect(pffft!.HEAPF32.length).toBe(after);
    expect(after * 4).toBeLessThan(64 * 2 ** 20);
  });

  it("gives its memory back when it is stopped half way", () => {
    const filter = Float64Array.from(noise(150_000, 9));
    const stopped = () => {
      let calls = 0;
      const checkpoint = () => {
        if (++calls > 2) throw new Error("stopped");
      };
      expect(() => createQuickConvolver([noise(900_000, 8)], 150_000).render([filter], { checkpoint })).toThrow(
        "stopped",
      );
    };
    stopped();
    const after = pffft!.HEAPF32.length;
    for (let i = 0; i < 12; i++) stopped();
    expect(pffft!.HEAPF32.length).toBe(after);
  });

  describe("where the runtime has no SIMD", () => {
    afterEach(() => {
      vi.doUnmock("../../src/filter/pffft.ts");
    });

    it("gives what double precision gives", async () => {
      vi.doMock("../../src/filter/pffft.ts", () => ({ pffft: null }));
      // A copy of this module alone: files of tests share a process, and a second copy of everything would be theirs, too.
      const copy = "../../src/filter/quick-convolve.ts?without-simd";
      const { createQuickConvolver: withoutSimd } = (await import(/* @vite-ignore */ copy)) as {
        createQuickConvolver: typeof createQuickConvolver;
      };
      expect(withoutSimd).not.toBe(createQuickConvolver);
      const inputs = [noise(9000, 1), noise(8000, 2)];
      const filters = [3, 4].map((seed) => Float64Array.from(noise(600, seed)));
      expect(withoutSimd(inputs, 600).render(filters)).toEqual(createConvolver(inputs, 600).render(filters));
    });
  });
});

describe("the SIMD module", () => {
  it("is there on every runtime that the project runs on", () => {
    expect(pffft).not.toBeNull();
  });
});
