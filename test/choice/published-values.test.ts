import { describe, expect, it } from "vitest";
import { isExtrapolated, qOfPeak, resonanceJndHz } from "../../src/choice/compare/resonance-jnd.ts";
import { camOf, erbBands, erbHz } from "../../src/choice/erb.ts";
import { coilImpedance, coilTransfer } from "../../src/choice/fit/coil-model.ts";
import { kPowerGain } from "../../src/choice/slices.ts";

const magnitude = ({ re, im }: { re: number; im: number }) => Math.hypot(re, im);

describe("coil circuits", () => {
  // G. Labella, Physics problems, alternating current no. 05: 6.7 kΩ, 3.4 H.
  const labella = { resistance: 6700, inductance: 3.4, capacitance: 0, loss: undefined };

  it("6.7 kΩ and 3.4 H have 9992 Ω at 347 Hz", () => {
    expect(magnitude(coilImpedance(labella, 347))).toBeCloseTo(9992, 0);
  });

  it("their reactance equals their resistance at 313.6 Hz", () => {
    const { re, im } = coilImpedance(labella, 313.63);
    expect(im / re).toBeCloseTo(1, 4);
  });

  // A first-year course problem (EGB120): 5.35 kΩ and 4.5 H into 319 pF at 2640 Hz.
  it("5.35 kΩ and 4.5 H into 319 pF give 1.651 times their EMF at 2640 Hz", () => {
    const coil = { resistance: 5350, inductance: 4.5, capacitance: 319e-12, loss: undefined };
    expect(magnitude(coilTransfer(coil, 2640))).toBeCloseTo(1.651, 3);
  });

  it("the same coil into 319 nF gives 92.85 mV at 82.5 Hz and 15.96 mV at 330 Hz for 100 mV", () => {
    const coil = { resistance: 5350, inductance: 4.5, capacitance: 319e-9, loss: undefined };
    expect(100 * magnitude(coilTransfer(coil, 82.5))).toBeCloseTo(92.85, 2);
    expect(100 * magnitude(coilTransfer(coil, 330))).toBeCloseTo(15.96, 2);
  });

  // C. E. LaForest, Characterizing Magnetic Guitar Pickups (and Other Large Inductors): 0.1 H, 210 Ω, 100 kHz.
  it("0.1 H with 25.33 pF has its impedance peak at 100 kHz, 299.2 times its reactance's share", () => {
    const coil = { resistance: 210, inductance: 0.1, capacitance: 25.33e-12, loss: undefined };
    const at = magnitude(coilImpedance(coil, 100_000));
    for (const nearby of [99_900, 100_100]) expect(magnitude(coilImpedance(coil, nearby))).toBeLessThan(at);
    // At resonance |Z| = Q·√(L/C) for a high Q.
    expect(at / Math.sqrt(0.1 / 25.33e-12)).toBeCloseTo(299.2, 0);
  });
});

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

  // Gagné and Zurek 1988: 0.079·Fr/√Q.
  it.each([
    [2000, 4, 79],
    [1000, 1, 79],
    [1000, 36, 13.17],
  ])("a resonance at %d Hz with Q %d must move %f Hz to be noticed", (hertz, q, jnd) => {
    expect(resonanceJndHz(hertz, q)).toBeCloseTo(jnd, 1);
  });

  it("says where the formula is used outside 300–2000 Hz and Q 1–36", () => {
    expect([
      isExtrapolated(2000, 4),
      isExtrapolated(2001, 4),
      isExtrapolated(1000, 0.9),
      isExtrapolated(299, 2),
    ]).toEqual([false, true, true, true]);
  });

  it("finds the Q of a second-order low-pass from its peak's height", () => {
    for (const q of [0.8, 1, 3, 10]) {
      // |H| at its maximum over H(0), sought on a fine grid of s = jw.
      let top = 0;
      for (let w = 0; w < 2; w += 1e-4) top = Math.max(top, 1 / Math.hypot(1 - w * w, w / q));
      expect(qOfPeak(20 * Math.log10(top))).toBeCloseTo(q, 4);
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
