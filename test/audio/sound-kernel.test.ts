import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { writeDithered } from "../../src/audio/dithered-steps.ts";
import { kWeighting } from "../../src/audio/k-weighting.ts";
import { sectionPeaks } from "../../src/audio/section-peaks.ts";
import { soundKernel } from "../../src/audio/simd/sound-kernel.ts";
import { weightedEnergies } from "../../src/audio/weighted-energy.ts";
import { noise } from "../filter/noise.ts";

/** Around the sizes of vectors, sections and chunks too. */
const lengths = fc.oneof(
  fc.integer({ min: 0, max: 300 }),
  fc.constantFrom(8191, 8192, 8193, 8224, 16_383, 16_384, 16_392),
  fc.integer({ min: 300, max: 20_000 }),
);
const sounds = fc
  .tuple(lengths, fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(1, 0.01, 3))
  .map(([length, seed, size]) => noise(length, seed).map((sample) => sample * size));

describe("the SIMD kernels", () => {
  it("are there on every runtime that the project runs on", () => {
    expect(soundKernel).not.toBeNull();
  });

  it("keep to one page of memory", () => {
    expect(soundKernel!.floats.byteLength).toBe(65_536);
  });

  it("find the peaks and bends of sections that plain arithmetic finds", () => {
    fc.assert(
      fc.property(sounds, (samples) => {
        const quick = sectionPeaks(samples);
        const plain = sectionPeaks(samples, null);
        expect(quick.largest).toEqual(plain.largest);
        // Two roundings to 24 bits of up to four times the largest sample.
        const tolerance = Math.max(...plain.largest, 0) * 5e-7;
        plain.bends.forEach((bend, k) => void expect(Math.abs(quick.bends[k]! - bend)).toBeLessThanOrEqual(tolerance));
      }),
      { numRuns: 60 },
    );
  });

  it("dither as plain arithmetic does, within one step and the same nearly everywhere, mono and in stereo", () => {
    fc.assert(
      fc.property(sounds, fc.constantFrom(1, 0.37), fc.constantFrom(1, 2), (samples, gain, stride) => {
        const [quick, plain] = [soundKernel, null].map((kernel) => {
          const steps = new Int16Array(stride * samples.length);
          for (let channel = 0; channel < stride; channel++)
            expect(writeDithered(steps, samples, gain, { channel, stride }, kernel)).toBe(true);
          return steps;
        });
        let different = 0;
        plain!.forEach((step, n) => {
          if (quick![n] === step) return;
          different++;
          expect(Math.abs(quick![n]! - step)).toBe(1);
        });
        // Single precision turns a rounding where the value lies within a few 2⁻¹⁰ steps of a half.
        expect(different).toBeLessThanOrEqual(3 + 0.005 * plain!.length);
      }),
      { numRuns: 60 },
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    "report a sample of %d wherever it is",
    (bad) => {
      for (const at of [0, 7, 4096, 9999]) {
        const samples = noise(10_000, 5);
        samples[at] = bad;
        for (const kernel of [soundKernel, null]) {
          const place = { channel: 0, stride: 1 };
          expect(writeDithered(new Int16Array(samples.length), samples, 1, place, kernel)).toBe(false);
        }
      }
    },
  );

  it("weight four stretches at once to the energies of one after the other", () => {
    const sections = fc.record({
      rate: fc.constantFrom(8000, 11_025, 22_055, 44_100),
      seconds: fc.double({ min: 0.1, max: 4, noNaN: true }),
      seed: fc.integer({ min: 1, max: 1e6 }),
    });
    fc.assert(
      fc.property(sections, ({ rate, seconds, seed }) => {
        const samples = noise(Math.round(rate * seconds), seed).map((value, n) => value + Math.sin(n / rate) + 0.5);
        const edges: number[] = [];
        for (let step = 0; Math.round(step * 0.1 * rate) <= samples.length; step++)
          edges.push(Math.round(step * 0.1 * rate));
        const quick = weightedEnergies(samples, edges, kWeighting(rate), rate);
        const plain = weightedEnergies(samples, edges, kWeighting(rate), rate, null);
        expect(quick.length).toBe(plain.length);
        // A billionth: the filters' rounding, and what is left of the warm-up.
        plain.forEach((energy, step) => void expect(Math.abs(quick[step]! / energy - 1)).toBeLessThan(1e-9));
      }),
      { numRuns: 40 },
    );
  });
});
