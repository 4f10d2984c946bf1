import { describe, expect, it } from "vitest";
import {
  filterDelaySamples,
  impulseResponse,
  impulseResponses,
  MAX_RESPONSE_SECONDS,
  type TransferFunction,
} from "../../src/filter/impulse-response.ts";
import {
  coilWithTone,
  errorDb,
  gainAt,
  logSpaced,
  rational,
  resonance,
  responseOf,
  sumOf,
  transferOf,
} from "./circuits.ts";

/** Poles and zeros a little apart at a 100 ms time constant, as a large cap in the tone branch leaves them. */
const slowDoublet = sumOf(resonance(4000, 2, 0.95), rational([0.05], [0.1, 1]));
const seriesCap = transferOf((omega) => {
  const coil = gainAt(coilWithTone(250e3), omega / (2 * Math.PI));
  const highPass = {
    re: (omega * 0.01) ** 2 / (1 + (omega * 0.01) ** 2),
    im: (omega * 0.01) / (1 + (omega * 0.01) ** 2),
  };
  return { re: coil.re * highPass.re - coil.im * highPass.im, im: coil.re * highPass.im + coil.im * highPass.re };
});

const CASES: readonly [string, TransferFunction][] = [
  ["a resonance of Q 5 at 1.5 kHz", resonance(1500, 5)],
  ["a resonance of Q 3 at 4.5 kHz", resonance(4500, 3)],
  ["a resonance of Q 5 at 12 kHz", resonance(12_000, 5)],
  ["a coil at tone 10", coilWithTone(250e3)],
  ["a coil at tone 5", coilWithTone(37_500)],
  ["a coil at tone 0", coilWithTone(0)],
  ["a coil at tone 0 with 100 nF", coilWithTone(0, 4, 1, 100e-9)],
  ["a 100 ms pole-zero pair", slowDoublet],
  ["a series cap", seriesCap],
  ["a plain gain", rational([0.3], [1])],
];

function worstErrorDb(taps: Float64Array, rateHz: number, transfer: TransferFunction): number {
  const top = Math.min(18_000, 0.8 * (rateHz / 2));
  const errors = logSpaced(20, top, 60).map((f) =>
    errorDb(responseOf(taps, filterDelaySamples(rateHz), rateHz, f), gainAt(transfer, f)),
  );
  return Math.max(...errors);
}

describe("impulseResponse", () => {
  for (const rateHz of [8000, 22_050, 44_100, 48_000, 96_000, 192_000]) {
    it.each(CASES)(`follows %s within 0.002 dB, phase included, at ${rateHz} Hz`, (_, transfer) => {
      expect(worstErrorDb(impulseResponse(transfer, rateHz).taps, rateHz, transfer)).toBeLessThan(0.002);
    });
  }

  it.each([44_100, 48_000, 96_000])("keeps the sum of two out-of-phase coils right in its null at %d Hz", (rateHz) => {
    const coils = [coilWithTone(60e3, 2.5, 1), coilWithTone(60e3, 2.55, -0.99)];
    const [a, b] = impulseResponses(coils, rateHz);
    expect(a!.taps.length).toBe(b!.taps.length);
    const difference = a!.taps.map((tap, n) => tap + b!.taps[n]!);
    expect(gainAt(sumOf(...coils), 100).re).toBeLessThan(0.011);
    expect(worstErrorDb(difference, rateHz, sumOf(...coils))).toBeLessThan(0.02);
  });

  it("keeps a coil and a doublet 40 dB down right where their sum nearly vanishes", () => {
    const transfers = [slowDoublet, sumOf(resonance(4000, 2.02, -0.94), rational([-0.05], [0.1, 1]))];
    const [a, b] = impulseResponses(transfers, 48_000);
    const difference = a!.taps.map((tap, n) => tap + b!.taps[n]!);
    expect(worstErrorDb(difference, 48_000, sumOf(...transfers))).toBeLessThan(0.05);
  });

  it("is linear in the transfer function", () => {
    const parts = [coilWithTone(250e3), resonance(3000, 4, -0.6)];
    const [a, b, sum] = impulseResponses([...parts, sumOf(...parts)], 48_000);
    // The tails left off differ by 4e-6 of the gain at most.
    sum!.taps.forEach((tap, n) => void expect(Math.abs(tap - a!.taps[n]! - b!.taps[n]!)).toBeLessThan(1e-6));
  });

  it("begins no earlier than the taper allows, though room is left to see it", () => {
    const { taps, delaySamples } = impulseResponse(resonance(4500, 3), 48_000, { lookAheadSamples: 200 });
    const early = taps
      .subarray(0, delaySamples - filterDelaySamples(48_000))
      .reduce((sum, tap) => sum + Math.abs(tap), 0);
    expect(delaySamples).toBe(filterDelaySamples(48_000) + 200);
    expect(early).toBeLessThan(1e-6);
  });

  it("leaves room before the cause for an inverse filter when asked to", () => {
    const wanted = transferOf((omega) => ({ re: Math.cos(omega * 2e-3), im: Math.sin(omega * 2e-3) }));
    const { taps, delaySamples } = impulseResponse(wanted, 48_000, { lookAheadSamples: 128 });
    const loudest = taps.findIndex((tap) => Math.abs(tap) === Math.max(...taps));
    expect(loudest).toBe(delaySamples - 96);
  });

  it("turns a gain of 1 into a symmetric pulse of sum 1 at the delay", () => {
    const { taps, delaySamples } = impulseResponse(rational([1], [1]), 48_000);
    expect(taps.reduce((sum, tap) => sum + tap, 0)).toBeCloseTo(1, 9);
    for (let n = 1; n <= delaySamples; n++) expect(taps[delaySamples - n]).toBeCloseTo(taps[delaySamples + n]!, 12);
  });

  it("fades a decay longer than its bound, 20 Hz and up still within 0.05 dB", () => {
    const transfer = sumOf(rational([1], [1]), rational([0.5], [10, 1]));
    const { taps } = impulseResponse(transfer, 44_100);
    expect(taps.length).toBeLessThanOrEqual(2 * MAX_RESPONSE_SECONDS * 44_100);
    expect(worstErrorDb(taps, 44_100, transfer)).toBeLessThan(0.05);
  });

  it("gives silence for a coil that is cut off", () => {
    expect(impulseResponse(rational([0], [1]), 48_000).taps.every((tap) => tap === 0)).toBe(true);
  });

  it.each([
    ["under silence", 1e-10],
    ["hardly above silence", 1e-9],
  ])("takes no rounding for a decay: a gain %s is over at once", (_, gain) => {
    const rounding = transferOf((omega) => ({ re: gain * (0.9 + 1e-6 * Math.sin(1e9 * omega)), im: 0 }));
    const { taps } = impulseResponse(rounding, 192_000);
    expect(taps.length).toBeLessThan(1000);
    expect(taps.some((tap) => tap !== 0)).toBe(gain > 1e-10);
  });

  it("refuses a transfer function that is not finite, naming the frequency", () => {
    const broken = transferOf((omega) => ({ re: omega > 1e5 ? Number.NaN : 1, im: 0 }));
    expect(() => impulseResponse(broken, 48_000)).toThrow(/not finite at 159\d\d/);
  });
});
