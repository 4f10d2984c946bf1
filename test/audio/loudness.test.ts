import { describe, expect, it } from "vitest";
import { kWeighting } from "../../src/audio/k-weighting.ts";
import { integratedLoudness } from "../../src/audio/loudness.ts";
import type { Sound } from "../../src/audio/sound.ts";
import { noise } from "../filter/noise.ts";
import { dB, sines } from "./audio-files.ts";

/** A 1 kHz sine in both channels, its level changing as `[dBFS, seconds]` say. */
function steps(sampleRateHz: number, levels: readonly (readonly [number, number])[]): Sound {
  const parts = levels.map(([level, seconds]) => sines(sampleRateHz, seconds, [1000], dB(level)).channels[0]!);
  const samples = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    samples.set(part, at);
    at += part.length;
  }
  return { sampleRateHz, channels: [samples, samples] };
}

function gainDb(sampleRateHz: number, frequencyHz: number): number {
  const w = (2 * Math.PI * frequencyHz) / sampleRateHz;
  return kWeighting(sampleRateHz).reduce((total, { b0, b1, b2, a1, a2 }) => {
    const size = (c0: number, c1: number, c2: number) =>
      (c0 + c1 * Math.cos(w) + c2 * Math.cos(2 * w)) ** 2 + (c1 * Math.sin(w) + c2 * Math.sin(2 * w)) ** 2;
    return total + 10 * Math.log10(size(b0, b1, b2) / size(1, a1, a2));
  }, 0);
}

/** The standard step by step: the whole channel through each section in direct form, then every block of 400 ms by itself. */
function plainLoudness({ sampleRateHz, channels }: Sound): number | null {
  const weighted = channels.map((samples) =>
    kWeighting(sampleRateHz).reduce((input: Float64Array, { b0, b1, b2, a1, a2 }) => {
      const output = new Float64Array(input.length);
      for (let n = 0; n < input.length; n++) {
        const x = (back: number) => input[n - back] ?? 0;
        const y = (back: number) => output[n - back] ?? 0;
        output[n] = b0 * x(0) + b1 * x(1) + b2 * x(2) - a1 * y(1) - a2 * y(2);
      }
      return output;
    }, Float64Array.from(samples)),
  );
  const edge = (step: number) => Math.round(step * 0.1 * sampleRateHz);
  const powers: number[] = [];
  for (let step = 0; edge(step + 4) <= channels[0]!.length; step++) {
    const blocks = weighted.map((samples) => samples.subarray(edge(step), edge(step + 4)));
    powers.push(blocks.reduce((sum, block) => sum + block.reduce((s, y) => s + y * y, 0) / block.length, 0));
  }
  const loudness = (values: readonly number[]) =>
    -0.691 + 10 * Math.log10(values.reduce((sum, value) => sum + value, 0) / values.length);
  const heard = powers.filter((power) => loudness([power]) > -70);
  if (heard.length === 0) return null;
  return loudness(heard.filter((power) => loudness([power]) > loudness(heard) - 10));
}

describe("kWeighting", () => {
  it("has the coefficients of ITU-R BS.1770-4 tables 1 and 2 at 48 kHz", () => {
    const [shelf, highPass] = kWeighting(48_000);
    const table = [
      [shelf, [1.53512485958697, -2.69169618940638, 1.19839281085285, -1.69065929318241, 0.73248077421585]],
      [highPass, [1, -2, 1, -1.99004745483398, 0.99007225036621]],
    ] as const;
    for (const [section, [b0, b1, b2, a1, a2]] of table) {
      const wanted = { b0, b1, b2, a1, a2 };
      for (const key of ["b0", "b1", "b2", "a1", "a2"] as const) expect(section[key]).toBeCloseTo(wanted[key], 12);
    }
  });

  // From the tables by scipy.signal.freqz.
  it.each([
    [100, -1.1335],
    [997, 0.691],
    [1000, 0.6977],
    [2000, 3.0713],
    [4000, 3.968],
  ])("keeps the curve of the 48 kHz tables at %d Hz at other rates", (frequencyHz, wanted) => {
    expect(gainDb(48_000, frequencyHz)).toBeCloseTo(wanted, 3);
    for (const rate of [22_050, 44_100, 88_200, 96_000, 192_000]) {
      expect(Math.abs(gainDb(rate, frequencyHz) - wanted)).toBeLessThan(0.03);
    }
  });
});

describe("integratedLoudness", () => {
  it.each([
    [8000, 0.45],
    [11_025, 1.7],
    [22_055, 2.33],
    [44_100, 3],
    [48_000, 0.95],
    [96_000, 1.21],
  ])("is what the standard's own steps give, at %d Hz and %d s", (rate, seconds) => {
    const length = Math.round(rate * seconds);
    // An offset and a slow swell, since what is slow outlasts a warm-up the longest.
    const channels = [3, 4].map((seed) =>
      noise(length, seed).map((value, n) => 0.3 * value * (1 + Math.sin((9 * n) / rate)) + 0.2),
    );
    const sound = { sampleRateHz: rate, channels };
    expect(integratedLoudness(sound)).toBeCloseTo(plainLoudness(sound)!, 9);
    expect(integratedLoudness(sound, 0.25)).toBeCloseTo(plainLoudness(sound)! + 20 * Math.log10(0.25), 9);
  });

  // EBU Tech 3341 (2016), table 1, cases 1 to 5, ±0.1 LU; the last is the usual public test of the relative gate.
  const CASES: readonly [string, number, readonly (readonly [number, number])[]][] = [
    ["case 1", -23, [[-23, 20]]],
    ["case 2", -33, [[-33, 20]]],
    [
      "case 3",
      -23,
      [
        [-36, 10],
        [-23, 60],
        [-36, 10],
      ],
    ],
    [
      "case 4",
      -23,
      [
        [-72, 10],
        [-36, 10],
        [-23, 60],
        [-36, 10],
        [-72, 10],
      ],
    ],
    [
      "case 5",
      -23,
      [
        [-26, 20],
        [-20, 20.1],
        [-26, 20],
      ],
    ],
    [
      "the relative gate",
      -20,
      [
        [-20, 30],
        [-40, 30],
      ],
    ],
  ];

  it.each(CASES)("meets EBU Tech 3341 %s: %d LUFS", (_, wanted, levels) => {
    for (const rate of [44_100, 48_000])
      expect(Math.abs(integratedLoudness(steps(rate, levels))! - wanted)).toBeLessThan(0.1);
  });

  // ITU-R BS.1770-4: a 0 dBFS sine of 997 Hz in one channel reads −3.01 LKFS.
  it.each([44_100, 48_000, 96_000, 192_000])(
    "reads -3.01 LUFS for a full-scale 997 Hz sine in one channel at %d Hz",
    (rate) => {
      expect(integratedLoudness(sines(rate, 3, [997], 1))).toBeCloseTo(-3.01, 1);
      expect(integratedLoudness(sines(rate, 3, [997, 997], 1))).toBeCloseTo(0, 1);
    },
  );

  it("gives null for silence, for nothing, and under the absolute gate", () => {
    expect(integratedLoudness({ sampleRateHz: 48_000, channels: [new Float32Array(96_000)] })).toBeNull();
    expect(integratedLoudness({ sampleRateHz: 48_000, channels: [new Float32Array(100)] })).toBeNull();
    expect(integratedLoudness({ sampleRateHz: 48_000, channels: [new Float32Array(0)] })).toBeNull();
    expect(integratedLoudness(sines(48_000, 2, [1000], dB(-75)))).toBeNull();
  });

  it("measures a sound shorter than a gating block as one block", () => {
    expect(Math.abs(integratedLoudness(sines(48_000, 0.2, [997], 1))! + 3.01)).toBeLessThan(0.1);
  });

  it("follows a change of level decibel for decibel", () => {
    const loud = integratedLoudness(sines(44_100, 2, [440], 0.5))!;
    expect(integratedLoudness(sines(44_100, 2, [440], 0.5 * dB(-12)))).toBeCloseTo(loud - 12, 4);
  });
});
