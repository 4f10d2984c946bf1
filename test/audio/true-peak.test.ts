import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Sound } from "../../src/audio/sound.ts";
import { truePeak } from "../../src/audio/true-peak.ts";
import { noise } from "../filter/noise.ts";
import { sines } from "./audio-files.ts";

/** Sine under a slow bell, so that no edge of the file adds a peak of its own; `phase` in turns. */
function bell(cyclesPerSample: number, phase: number): Sound {
  const samples = Float32Array.from({ length: 4000 }, (_, n) => {
    const envelope = Math.exp(-(((n - 2000) / 600) ** 2));
    return 0.5 * envelope * Math.cos(2 * Math.PI * (cyclesPerSample * (n - 2000) + phase));
  });
  return { sampleRateHz: 48_000, channels: [samples] };
}

/** Every point between, none passed over: sinc under a cubed cosine over 24 samples, its taps summing to 1. */
function exhaustivePeak(samples: Float32Array): number {
  let peak = 0;
  for (const phase of [0.25, 0.5, 0.75]) {
    const taps = Array.from({ length: 24 }, (_, k) => {
      const x = Math.PI * (k - 11 - phase);
      return (Math.sin(x) / x) * Math.cos(x / 24) ** 3;
    });
    const sum = taps.reduce((total, tap) => total + tap, 0);
    for (let n = -12; n < samples.length + 12; n++) {
      const value = taps.reduce((total, tap, k) => total + (tap / sum) * (samples[n + k - 11] ?? 0), 0);
      peak = Math.max(peak, Math.abs(value));
    }
  }
  return samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), peak);
}

const sounds = fc
  .record({
    length: fc.integer({ min: 0, max: 400 }),
    seed: fc.integer({ min: 1, max: 1e6 }),
    /** From a slow wave to noise: how much each sample has of its own. */
    roughness: fc.constantFrom(0, 0.01, 0.3, 1),
    burst: fc.integer({ min: 0, max: 400 }),
  })
  .map(({ length, seed, roughness, burst }) => {
    const grain = noise(length, seed);
    return grain.map((value, n) => {
      const wave = Math.sin(0.1 * n + seed) * (1 - roughness) + roughness * value;
      return wave * (Math.abs(n - burst) < 40 ? 1 : 0.3);
    });
  });

describe("truePeak", () => {
  it("passes over no point that matters", () => {
    fc.assert(
      fc.property(sounds, (samples) => {
        const peak = truePeak({ sampleRateHz: 48_000, channels: [samples] });
        expect(Math.abs(peak - exhaustivePeak(samples))).toBeLessThan(1e-12);
      }),
      { numRuns: 150 },
    );
  });

  // EBU Tech 3341 cases 15 to 19 use such sines: samples at 45° miss the crest of a quarter-rate sine by 3 dB.
  it("finds the crest between the samples of a quarter-rate sine", () => {
    const sound = bell(0.25, 0.125);
    expect(Math.max(...sound.channels[0]!)).toBeLessThan(0.36);
    expect(Math.abs(20 * Math.log10(truePeak(sound) / 0.5))).toBeLessThan(0.02);
  });

  it("reads within the bound of four times oversampling at any phase", () => {
    for (const cycles of [0.01, 0.1, 0.2, 0.3, 0.35, 0.4]) {
      // Between points an eighth of a sample from the crest at worst (BS.1770-4, annex 2, appendix), and 0.05 dB for the interpolator.
      const worst = 20 * Math.log10(Math.cos(2 * Math.PI * cycles * 0.125)) - 0.05;
      for (let phase = 0; phase < 1; phase += 0.07) {
        const error = 20 * Math.log10(truePeak(bell(cycles, phase)) / 0.5);
        expect(error).toBeGreaterThan(worst);
        expect(error).toBeLessThan(0.05);
      }
    }
  });

  it("is never under the largest sample, wherever it stands", () => {
    for (const at of [0, 1, 15, 16, 17, 500, 998, 999]) {
      const samples = new Float32Array(1000);
      samples[at] = -0.75;
      expect(truePeak({ sampleRateHz: 48_000, channels: [samples] })).toBe(0.75);
    }
  });

  it("takes the louder channel and gives 0 for silence and for nothing", () => {
    const [quiet, loud] = [sines(48_000, 0.1, [100], 0.1).channels[0]!, sines(48_000, 0.1, [100], 0.7).channels[0]!];
    expect(truePeak({ sampleRateHz: 48_000, channels: [quiet, loud] })).toBeCloseTo(0.7, 3);
    expect(truePeak({ sampleRateHz: 48_000, channels: [new Float32Array(100)] })).toBe(0);
    expect(truePeak({ sampleRateHz: 48_000, channels: [new Float32Array(0)] })).toBe(0);
  });
});
