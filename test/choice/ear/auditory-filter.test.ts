import { describe, expect, it } from "vitest";
import { filterGain } from "../../../src/choice/ear/auditory-filter.ts";
import { thresholdDb } from "../../../src/choice/ear/threshold.ts";
import { erbHz } from "../../../src/choice/erb.ts";

/** ∫ gain df over one side of a filter, by the midpoint rule. */
function area(centreHz: number, from: number, to: number): number {
  const steps = 20_000;
  const width = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += filterGain(centreHz, from + (i + 0.5) * width) * width;
  return sum;
}

describe("the ear's filter", () => {
  it.each([100, 500, 1000, 4000, 10_000])(
    "at %d Hz is half an ERB wide above its centre: ∫(1 + pg)e^(−pg) df = 2·f/p",
    (hertz) => {
      expect(area(hertz, hertz, 3 * hertz) / (erbHz(hertz) / 2)).toBeCloseTo(1, 3);
    },
  );

  it("reaches farther down than up, so that low sound masks high sound", () => {
    expect(filterGain(2000, 1500)).toBeGreaterThan(3 * filterGain(2000, 2500));
    expect(filterGain(2000, 2000)).toBe(1);
  });

  it("has the lower skirt of Glasberg and Moore at 65 dB: 30.2 − 0.35·14 = 25.3 at 1 kHz", () => {
    // ERB_N(1 kHz) = 132.4 Hz, p = 30.2; at 800 Hz g = 0.2.
    expect(filterGain(1000, 800)).toBeCloseTo((1 + 25.3 * 0.2) * Math.exp(-25.3 * 0.2), 3);
  });
});

describe("the threshold of hearing", () => {
  // ISO 226:2003 (as ISO 389-7), free field; from memory.
  it.each([
    [125, 22.1],
    [250, 11.4],
    [500, 4.4],
    [1000, 2.4],
    [2000, -1.3],
    [4000, -5.4],
    [8000, 12.6],
    [10_000, 13.9],
  ])(
    "at %d Hz lies within 8 dB of the standard's %d dB SPL, all under the room's 20 dB or near it",
    (hertz, decibels) => {
      expect(Math.abs(thresholdDb(hertz) - decibels)).toBeLessThan(8);
    },
  );
});
