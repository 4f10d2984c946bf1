import { describe, expect, test } from "vitest";
import { REFERENCE_COIL } from "../../src/strings/comb.ts";
import { HANDS } from "../../src/strings/hands.ts";
import type { Note } from "../../src/strings/score.ts";
import { scrapeForce } from "../../src/strings/scrape.ts";
import { soundingString, usualStringSet } from "../../src/strings/string-set.ts";
import { strokeOf } from "../../src/strings/stroke.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { centroidHz } from "./centroid.ts";
import { decibels, rmsOf } from "./spectrum.ts";

const RATE = 48_000;
const SET = usualStringSet();
const NOTE: Note = { timeSeconds: 0, string: 6, fret: 0, velocity: 1, durationSeconds: 4 };

function play(note: Partial<Note>): Float32Array {
  const phrase = { name: "note", description: "", seconds: 0.5, notes: [{ ...NOTE, ...note }] };
  return renderPhrase(phrase, [REFERENCE_COIL], SET, RATE)[0]!;
}

function difference(first: Float32Array, second: Float32Array): Float32Array {
  return first.map((value, i) => value - second[i]!);
}

describe("the scrape of a plectrum", () => {
  const clean = play({ scrape: 0 });
  const scrape = difference(play({}), clean);

  test("is bright beside the note that it starts, well under it and mostly over in a tenth of a second", () => {
    expect(centroidHz(scrape.subarray(0, RATE / 20), RATE)).toBeGreaterThan(2 * centroidHz(clean, RATE));
    const level = decibels(rmsOf(scrape.subarray(0, RATE / 50)) / rmsOf(clean.subarray(0, RATE / 50)));
    expect(level).toBeGreaterThan(-45);
    expect(level).toBeLessThan(-15);
    expect(rmsOf(scrape.subarray(RATE / 10, RATE / 5)) / rmsOf(scrape.subarray(0, RATE / 50))).toBeLessThan(0.25);
  });

  test("goes on exactly where the force ends: half of it and the other half make the whole", () => {
    const half = difference(play({ scrape: 0.5 }), clean);
    expect(
      decibels(
        rmsOf(
          difference(
            scrape,
            half.map((value) => 2 * value),
          ),
        ) / rmsOf(scrape),
      ),
    ).toBeLessThan(-60);
  });

  test("comes from the same place through the same coil: a pluck at a node leaves that partial out of it", () => {
    const place = { pluckMetres: 0.648 / 4 };
    const own = difference(play(place), play({ ...place, scrape: 0 })).subarray(0, RATE / 4);
    const at = (n: number) => {
      const hertz = n * 82.41 * Math.sqrt(1 + soundingString(SET, 6, 0).inharmonicity * n * n);
      return Math.hypot(
        ...[Math.cos, Math.sin].map((wave) =>
          own.reduce(
            (sum, value, i) =>
              sum + value * wave((2 * Math.PI * hertz * i) / RATE) * Math.sin((Math.PI * i) / own.length) ** 2,
            0,
          ),
        ),
      );
    };
    expect(at(8) / Math.hypot(at(7), at(9))).toBeLessThan(0.05);
  });

  test("is the same for the same pluck and another for the next", () => {
    expect(scrapeForce(5, RATE)).toEqual(scrapeForce(5, RATE));
    const [one, other] = [scrapeForce(5, RATE), scrapeForce(6, RATE)];
    const alike = one.reduce((sum, value, i) => sum + value * other[i]!, 0);
    expect(Math.abs(alike)).toBeLessThan(0.2);
    expect(one.reduce((sum, value) => sum + value * value, 0)).toBeCloseTo(1, 9);
  });
});

describe("a hand", () => {
  test("plucks nearer the bridge and narrower the brighter it is, and a finger scrapes nothing", () => {
    const [bright, usual, dark] = (["bright", "usual", "dark"] as const).map((hand) =>
      strokeOf({ hand }, soundingString(SET, 6, 0)),
    );
    for (const [sharper, softer] of [
      [bright!, usual!],
      [usual!, dark!],
    ] as const) {
      expect(sharper.placeMetres).toBeLessThan(softer.placeMetres);
      expect(sharper.widthMetres).toBeLessThan(softer.widthMetres);
      expect(sharper.scrapeSeconds).toBeGreaterThan(softer.scrapeSeconds);
    }
    expect(dark!.scrapeSeconds).toBe(0);
  });

  test.each(Object.keys(HANDS) as (keyof typeof HANDS)[])(
    "stays short of the middle of a stopped string: %s",
    (hand) => {
      const string = soundingString(SET, 1, 22);
      const { placeMetres } = strokeOf({ hand }, string);
      expect(placeMetres).toBeGreaterThan(0);
      expect(placeMetres).toBeLessThan(string.lengthMetres / 2);
    },
  );

  test("that lets go slowly takes 3 dB at 3.3 kHz", () => {
    const level = (releaseSeconds: number) => Math.exp(-((2 * Math.PI * 3314 * releaseSeconds) ** 2) / 2);
    expect(decibels(level(HANDS.dark.releaseSeconds))).toBeCloseTo(-3, 1);
  });
});
