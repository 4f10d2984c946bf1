import { describe, expect, it } from "vitest";
import { decibels } from "../../../src/decibels.ts";
import { realFft } from "../../../src/filter/real-fft.ts";
import { DRIVE_DELAY_SAMPLES } from "../../../src/listening/drive/delay.ts";
import { DriveStream } from "../../../src/listening/drive/drive-stream.ts";
import { driven } from "../../../src/listening/drive/driven.ts";
import { driveLaw, MAX_DRIVE } from "../../../src/listening/drive/law.ts";

const SIZE = 2 ** 13;

/** A full-scale sine, 1 V at the jack, of a whole odd number of periods in SIZE samples; settled before the middle third. */
function sineNear(frequencyHz: number, rate: number, volts = 1) {
  const bin = Math.round((frequencyHz * SIZE) / rate) | 1;
  const samples = Float32Array.from({ length: 3 * SIZE }, (_, n) => volts * Math.sin((2 * Math.PI * bin * n) / SIZE));
  return { bin, samples };
}

/** dB of each bin of the middle third over a sine of 1 V. */
function levels(sound: Float32Array): Float64Array {
  const spectrum = new Float64Array(SIZE + 2);
  realFft(SIZE).forward(spectrum, Float64Array.from(sound.subarray(SIZE, 2 * SIZE)));
  return Float64Array.from({ length: SIZE / 2 }, (_, k) =>
    decibels(Math.hypot(spectrum[2 * k]!, spectrum[2 * k + 1]!) / (SIZE / 2)),
  );
}

function worstBesideHarmonics(found: Float64Array, bin: number): number {
  return found.reduce((worst, level, k) => (k % bin === 0 ? worst : Math.max(worst, level - found[bin]!)), -300);
}

describe.each([44_100, 48_000])("a driven amplifier at %d Hz", (rate) => {
  it("folds back less than -80 dB of a full-scale 5 kHz at the dial's end, from 0 Hz to the Nyquist frequency", () => {
    const { bin, samples } = sineNear(5000, rate);
    const found = levels(driven(samples, MAX_DRIVE));
    // It is driven indeed: a square wave's third harmonic is 9.5 dB down.
    expect(found[3 * bin]! - found[bin]!).toBeGreaterThan(-11);
    expect(worstBesideHarmonics(found, bin)).toBeLessThan(-80);
  });

  it("folds back less than -120 dB at the middle of the dial", () => {
    const { bin, samples } = sineNear(5000, rate);
    expect(worstBesideHarmonics(levels(driven(samples, 5)), bin)).toBeLessThan(-120);
  });

  it("leaves a quiet sound as it is, a whole number of samples late, up to 18 kHz", () => {
    for (const frequency of [20, 1000, 10_000, 18_000]) {
      const { samples } = sineNear(frequency, rate, 1e-4);
      const { perVolt, volts } = driveLaw(3);
      const output = driven(samples, 3);
      const gain = perVolt * volts;
      let error = 0;
      for (let n = SIZE; n < 2 * SIZE; n++)
        error = Math.max(error, Math.abs(output[n + DRIVE_DELAY_SAMPLES]! - gain * samples[n]!));
      // A fiftieth of a decibel is 0.23 %.
      expect(error / (gain * 1e-4)).toBeLessThan(2.3e-3);
    }
  });
});

describe("a live sound, block by block", () => {
  it("comes out of the amplifier as a rendered one does", () => {
    const samples = Float32Array.from({ length: 20_000 }, (_, n) => 0.4 * Math.sin(n * n * 1e-5) * Math.cos(n * 1e-3));
    const whole = driven(samples, 7);
    const stream = new DriveStream(driveLaw(7), 128);
    const blocks = new Float32Array(samples.length);
    for (let n = 0; n < samples.length; n += 128) stream.run(samples.subarray(n, n + 128), blocks.subarray(n, n + 128));
    expect(Math.max(...blocks.map((sample, n) => Math.abs(sample - whole[n]!)))).toBeLessThan(3e-6);
  });
});

describe("the drive", () => {
  const peakOf = (samples: Float32Array) => samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);

  it("leaves a peak of a quarter of a volt as high as it was, at every step of the dial", () => {
    const { samples } = sineNear(200, 48_000, 0.25);
    for (const drive of [0.1, 3, 6, 10]) expect(peakOf(driven(samples, drive))).toBeCloseTo(0.25, 2);
  });

  it("cleans up as the volts at the jack come down", () => {
    const third = (volts: number) => {
      const { bin, samples } = sineNear(200, 48_000, volts);
      const found = levels(driven(samples, 6));
      return found[3 * bin]! - found[bin]!;
    };
    expect(third(0.3)).toBeGreaterThan(-21);
    expect(third(0.03)).toBeLessThan(-45);
    // A cube law's harmonic falls by 40 dB with the tenth of the volts.
    expect(third(0.003) - third(0.03)).toBeCloseTo(-40, 0);
  });

  it("is barely there at the dial's beginning", () => {
    const { bin, samples } = sineNear(200, 48_000, 0.3);
    const found = levels(driven(samples, 0.01));
    expect(found[3 * bin]! - found[bin]!).toBeLessThan(-60);
  });
});
