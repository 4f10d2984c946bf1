import { describe, expect, test } from "vitest";
import { type CoilPlace, REFERENCE_COIL } from "../../src/strings/comb.ts";
import { roomHum } from "../../src/strings/hum.ts";
import { phraseNamed } from "../../src/strings/phrases.ts";
import { usualStringSet } from "../../src/strings/string-set.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { decibels, peakOf, rmsOf, windowedMagnitude } from "./spectrum.ts";

const RATE = 44_100;
const SET = usualStringSet();
const PHRASE = phraseNamed("pluck");

function sum(signals: readonly Float32Array[]): Float32Array {
  return signals[0]!.map((value, i) => value + signals[1]![i]!);
}

/** Winding and magnet, +1 or −1 each: the string hears both, hum the winding alone. */
function pair(winding: 1 | -1, magnet: 1 | -1) {
  const sign = (winding * magnet) as 1 | -1;
  const coils: CoilPlace[] = [REFERENCE_COIL, { ...REFERENCE_COIL, sign }];
  const hum = roomHum({
    mainsHz: 50,
    coils: [
      { humSign: 1, turnsScale: 1 },
      { humSign: winding, turnsScale: 1 },
    ],
    seconds: 1,
    sampleRateHz: RATE,
  });
  return { string: renderPhrase(PHRASE, coils, SET, RATE), hum };
}

describe("two equal coils", () => {
  test.each([
    { winding: 1, magnet: 1, string: "adds", hum: "adds" },
    { winding: -1, magnet: -1, string: "adds", hum: "cancels" },
    { winding: 1, magnet: -1, string: "cancels", hum: "adds" },
    { winding: -1, magnet: 1, string: "cancels", hum: "cancels" },
  ] as const)(
    "with winding $winding and magnet $magnet: the string $string, hum $hum",
    ({ winding, magnet, ...outcome }) => {
      const signals = pair(winding, magnet);
      for (const part of ["string", "hum"] as const) {
        const alone = rmsOf(signals[part][0]!);
        const together = rmsOf(sum(signals[part]));
        expect(alone).toBeGreaterThan(1e-3);
        if (outcome[part] === "adds") expect(together / alone).toBeCloseTo(2, 6);
        else expect(together).toBe(0);
      }
    },
  );

  test("at different places and opposite signs leave what the places differ in", () => {
    const coils: CoilPlace[] = [REFERENCE_COIL, { ...REFERENCE_COIL, distanceMetres: 0.162, sign: -1 }];
    const left = rmsOf(sum(renderPhrase(PHRASE, coils, SET, RATE)));
    expect(left).toBeGreaterThan(1e-3);
  });
});

describe("room hum", () => {
  const field = (mainsHz: 50 | 60, sampleRateHz: number) =>
    roomHum({ mainsHz, coils: [{ humSign: 1, turnsScale: 1 }], seconds: 1, sampleRateHz })[0]!;

  test.each([50, 60] as const)("at %d Hz is made of that and its harmonics and of nothing between", (mainsHz) => {
    const samples = field(mainsHz, RATE);
    const level = (hertz: number) =>
      (2 / RATE) * windowedMagnitude(samples, 0, new Float64Array(RATE).fill(1), hertz / RATE);
    expect(level(mainsHz)).toBeGreaterThan(1e-3);
    expect(level(3 * mainsHz)).toBeGreaterThan(1e-4);
    expect(level(1.5 * mainsHz)).toBeLessThan(1e-8);
  });

  test("lies 30 to 50 dB under the strum of a reference coil (common practice, no source)", () => {
    const strum = peakOf(renderPhrase(phraseNamed("strum"), [REFERENCE_COIL], SET, RATE)[0]!);
    const below = decibels(strum / peakOf(field(50, RATE)));
    expect(below).toBeGreaterThan(30);
    expect(below).toBeLessThan(50);
  });

  test("grows with a coil's turns and starts from zero", () => {
    const coils = [
      { humSign: 1, turnsScale: 1 },
      { humSign: 1, turnsScale: 2 },
    ] as const;
    const [one, two] = roomHum({ mainsHz: 60, coils, seconds: 0.1, sampleRateHz: 8000 });
    expect(one![0]).toBe(0);
    expect(rmsOf(two!) / rmsOf(one!)).toBeCloseTo(2, 6);
  });
});
