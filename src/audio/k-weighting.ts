import { amplitudeFromDecibels } from "../decibels.ts";

/** Second-order section, a0 = 1: y = b0·x + b1·x₁ + b2·x₂ − a1·y₁ − a2·y₂. */
export interface Biquad {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/**
 * The analog filters whose bilinear transform at 48 kHz gives tables 1 and 2 of ITU-R BS.1770-4: a high shelf (the head) and a
 * high-pass (the RLB curve). Values recovered from those tables (De Man, Evaluation of Implementations of the EBU R128 Loudness
 * Measurement, AES 145, 2018; from memory), checked in the tests against the tables themselves.
 */
const SHELF = {
  cornerHz: 1681.974450955533,
  q: 0.7071752369554196,
  gainDb: 3.999843853973347,
  bandExponent: 0.4996667741545416,
};
const HIGH_PASS = { cornerHz: 38.13547087602444, q: 0.5003270373238773 };
const TABLE_RATE_HZ = 48_000;

/** The two K-weighting sections at any rate; exactly the published coefficients at 48 kHz. */
export function kWeighting(sampleRateHz: number): readonly [Biquad, Biquad] {
  return [shelf(sampleRateHz), highPass(sampleRateHz)];
}

function shelf(sampleRateHz: number): Biquad {
  const k = Math.tan((Math.PI * SHELF.cornerHz) / sampleRateHz);
  const top = amplitudeFromDecibels(SHELF.gainDb);
  const band = top ** SHELF.bandExponent;
  const a0 = 1 + k / SHELF.q + k * k;
  return {
    b0: (top + (band * k) / SHELF.q + k * k) / a0,
    b1: (2 * (k * k - top)) / a0,
    b2: (top - (band * k) / SHELF.q + k * k) / a0,
    a1: (2 * (k * k - 1)) / a0,
    a2: (1 - k / SHELF.q + k * k) / a0,
  };
}

function highPass(sampleRateHz: number): Biquad {
  const k = Math.tan((Math.PI * HIGH_PASS.cornerHz) / sampleRateHz);
  const a0 = highPassA0(sampleRateHz);
  // Table 2 leaves the numerator at 1, −2, 1, a gain of a0 at 48 kHz; other rates get that same gain.
  const gain = highPassA0(TABLE_RATE_HZ) / a0;
  return { b0: gain, b1: -2 * gain, b2: gain, a1: (2 * (k * k - 1)) / a0, a2: (1 - k / HIGH_PASS.q + k * k) / a0 };
}

function highPassA0(sampleRateHz: number): number {
  const k = Math.tan((Math.PI * HIGH_PASS.cornerHz) / sampleRateHz);
  return 1 + k / HIGH_PASS.q + k * k;
}
