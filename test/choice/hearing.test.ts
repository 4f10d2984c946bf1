import { describe, expect, it } from "vitest";
import { camOf, erbBands, erbHz } from "../../src/choice/erb.ts";
import { kPowerGain } from "../../src/choice/slices.ts";

describe("hearing", () => {
  it("ERB_N is 132.44 Hz at 1 kHz (ANSI/ASA S3.4-2007)", () => {
    expect(erbHz(1000)).toBeCloseTo(132.4447, 4);
  });

  // Glasberg and Moore 1990 in rounder numbers, from memory: within 0.2 %, and 15.62, 21.16 and 27.11 Cam at 1, 2 and 4 kHz.
  it("ERB_N agrees with 24.7·(4.37·F + 1) within 0.2 %", () => {
    for (const [hertz, width] of [
      [500, 78.67],
      [2000, 240.58],
      [4000, 456.46],
    ])
      expect(Math.abs(erbHz(hertz!) / width! - 1)).toBeLessThan(0.002);
    // Three digits of rounding on top of the 0.2 %.
    for (const [hertz, cams] of [
      [1000, 15.62],
      [2000, 21.16],
      [4000, 27.11],
    ])
      expect(Math.abs(camOf(hertz!) / cams! - 1)).toBeLessThan(0.0025);
  });

  it("the bands tile 50 Hz to 16 kHz, each one ERB wide at its own centre", () => {
    const bands = erbBands();
    expect(bands[0]!.low).toBe(50);
    expect(bands.at(-1)!.high).toBe(16_000);
    for (const [i, { low, high, centre }] of bands.slice(0, -1).entries()) {
      expect(high).toBe(bands[i + 1]!.low);
      expect((high - low) / erbHz(centre)).toBeCloseTo(1, 12);
    }
  });

  // ITU-R BS.1770-4 tables at 48 kHz: 0.6977 dB at 1 kHz; −1.1335, 3.0713, 3.968 and 4.0419 dB by scipy.signal.freqz of the tables.
  it.each([
    [1000, 0.6977],
    [100, -1.1335],
    [2000, 3.0713],
    [4000, 3.968],
    [10_000, 4.0419],
  ])("K-weighting at %d Hz is %d dB", (hertz, decibels) => {
    expect(10 * Math.log10(kPowerGain(hertz))).toBeCloseTo(decibels, 3);
  });
});
