import { describe, expect, it } from "vitest";
import { TEST_SIGNAL_PEAK, TEST_SIGNALS, testSignal } from "../../src/audio/signals.ts";
import type { Sound } from "../../src/audio/sound.ts";

function bytesOf(sound: Sound): Uint8Array {
  return new Uint8Array(sound.channels[0]!.buffer);
}

const rates = [8000, 44_100, 48_000, 192_000];

/** Power near a frequency, by the plain sum over a Hann-weighted stretch. */
function powerAt(samples: Float32Array, start: number, length: number, cyclesPerSample: number): number {
  let re = 0;
  let im = 0;
  for (let n = 0; n < length; n++) {
    const weighted = samples[start + n]! * (1 - Math.cos((2 * Math.PI * n) / length));
    re += weighted * Math.cos(2 * Math.PI * cyclesPerSample * n);
    im -= weighted * Math.sin(2 * Math.PI * cyclesPerSample * n);
  }
  return re * re + im * im;
}

describe("testSignal", () => {
  it.each(TEST_SIGNALS)("%s is mono, repeatable, and 12 dB under full scale at every rate", (name) => {
    for (const rate of rates) {
      const sound = testSignal(name, rate);
      expect(sound.sampleRateHz).toBe(rate);
      expect(sound.channels.length).toBe(1);
      const peak = sound.channels[0]!.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
      expect(peak).toBeLessThanOrEqual(TEST_SIGNAL_PEAK);
      expect(peak).toBeGreaterThan(0.98 * TEST_SIGNAL_PEAK);
      expect(Buffer.compare(bytesOf(testSignal(name, rate)), bytesOf(sound))).toBe(0);
    }
  });

  it.each(rates)(
    "sweeps from 10 Hz to 0.48 of %d Hz, equal time for each octave, and starts and ends softly",
    (rate) => {
      const samples = testSignal("sweep", rate).channels[0]!;
      expect(Math.abs(samples[0]!) + Math.abs(samples.at(-1)!)).toBeLessThan(1e-6);
      const crossings: number[] = [];
      for (let n = 1; n < samples.length; n++) if (samples[n - 1]! < 0 && samples[n]! >= 0) crossings.push(n);
      const span = Math.log((0.48 * rate) / 10);
      // From a tenth of the way up to where a period still has 20 samples, each period is as long as the law of the sweep says.
      for (let k = 1; k < crossings.length; k++) {
        const middle = (crossings[k]! + crossings[k - 1]!) / 2 / samples.length;
        const wanted = rate / (10 * Math.exp(span * middle));
        if (wanted < 20) break;
        expect(Math.abs(crossings[k]! - crossings[k - 1]! - wanted)).toBeLessThan(1.5 + 0.003 * wanted);
      }
    },
  );

  it("spreads noise evenly over the band", () => {
    const samples = testSignal("noise", 48_000).channels[0]!;
    const bands = Array.from({ length: 8 }, (_, band) => {
      let power = 0;
      for (let k = 0; k < 60; k++) power += powerAt(samples, k * 512, 512, (band * 32 + 16) / 512);
      return power;
    });
    const mean = bands.reduce((sum, power) => sum + power, 0) / bands.length;
    // The mean of 60 such powers scatters by 13 %; 4 sigma.
    for (const power of bands) expect(Math.abs(power / mean - 1)).toBeLessThan(0.52);
  });

  it("clicks once, 10 ms after the start", () => {
    const samples = testSignal("click", 48_000).channels[0]!;
    expect([...samples.keys()].filter((n) => samples[n] !== 0)).toEqual([480]);
  });
});
