import { describe, expect, test } from "vitest";
import { REFERENCE_COIL } from "../../src/strings/comb.ts";
import { HAND_NAMES } from "../../src/strings/hands.ts";
import { PHRASES, phraseNamed } from "../../src/strings/phrases.ts";
import { vibrato } from "../../src/strings/pitch-curve.ts";
import { type Note, playedBy } from "../../src/strings/score.ts";
import { usualStringSet } from "../../src/strings/string-set.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { casesOf } from "../effort.ts";
import { centroidHz } from "./centroid.ts";
import { cents, decibels, measurePartial, peakOf, rmsOf } from "./spectrum.ts";

const RATE = 24_000;
const SET = usualStringSet();
const NOTE: Note = { timeSeconds: 0.05, string: 2, fret: 12, velocity: 0.9, durationSeconds: 3 };

function play(note: Partial<Note>, seconds = 1): Float32Array {
  const phrase = { name: "note", description: "", seconds, notes: [{ ...NOTE, ...note }] };
  return renderPhrase(phrase, [REFERENCE_COIL], SET, RATE)[0]!;
}

describe("a hand", () => {
  const centroids = (name: string) =>
    HAND_NAMES.map((hand) => {
      const [samples] = renderPhrase(playedBy(phraseNamed(name), hand), [REFERENCE_COIL], SET, RATE);
      return centroidHz(samples!, RATE);
    });

  test.each(casesOf(PHRASES, 4).map(({ name }) => name))(
    "makes %s brighter at the bridge and darker at the neck",
    (name) => {
      expect(HAND_NAMES).toEqual(["usual", "bright", "dark"]);
      const [usual, bright, dark] = centroids(name);
      expect(bright! / usual!).toBeGreaterThan(1.05);
      expect(usual! / dark!).toBeGreaterThan(1.05);
    },
  );
});

describe("vibrato", () => {
  test("takes the pitch as far as it is asked, as often, and never under the fret", () => {
    const pitch = vibrato({ semitones: 0.5, cyclesPerSecond: 2, fromSeconds: 0.25, toSeconds: 2.75 });
    const signal = play({ pitch, slantDegrees: 0, scrape: 0 }, 3);
    const fret = SET.strings[1]!.openFrequencyHz * 2;
    // Whole cycles of the tone, in windows of a twentieth of a second.
    const offs = Array.from({ length: 40 }, (_, i) => {
      const from = Math.round((0.3 + 0.0625 * i) * RATE);
      const piece = signal.subarray(from, from + RATE / 20);
      return cents(pitchOf(piece, fret), fret);
    });
    expect(Math.max(...offs)).toBeGreaterThan(44);
    expect(Math.max(...offs)).toBeLessThan(53);
    expect(Math.min(...offs)).toBeGreaterThan(-4);
    const rises = offs.filter((off, i) => i > 0 && off > 25 && offs[i - 1]! <= 25).length;
    expect(rises).toBe(5);
  });
});

/** The frequency of the strongest partial near one, from how far its phase runs in half a window. */
function pitchOf(piece: Float32Array, nearHz: number): number {
  const half = piece.length >> 1;
  const phase = (from: number) => {
    let [re, im] = [0, 0];
    for (let i = 0; i < half; i += 1) {
      const weight = Math.sin((Math.PI * (i + 0.5)) / half) ** 2 * piece[from + i]!;
      re += weight * Math.cos((2 * Math.PI * nearHz * i) / RATE);
      im -= weight * Math.sin((2 * Math.PI * nearHz * i) / RATE);
    }
    return Math.atan2(im, re);
  };
  const turn = phase(half) - phase(0) - (2 * Math.PI * nearHz * half) / RATE;
  const wrapped = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  return nearHz + (wrapped * RATE) / (2 * Math.PI * half);
}

describe("a swell", () => {
  const [swelled, plucked] = [play({ swellSeconds: 0.7 }), play({})];
  const onset = Math.round(0.05 * RATE);

  test("has no onset: the pluck's first 30 ms are 40 dB down, and its loudest moment comes later than a third of a second", () => {
    const first = (signal: Float32Array) => rmsOf(signal.subarray(onset, onset + 0.03 * RATE));
    expect(decibels(first(swelled) / first(plucked))).toBeLessThan(-40);
    const loudest = (signal: Float32Array) => {
      const peak = peakOf(signal);
      return signal.findIndex((value) => Math.abs(value) === peak) / RATE;
    };
    expect(loudest(plucked)).toBeLessThan(0.15);
    expect(loudest(swelled)).toBeGreaterThan(0.4);
  });

  test("is the plucked note once the knob is up", () => {
    const from = Math.ceil((0.05 + 0.7) * RATE) + 200;
    const left = swelled.subarray(from).map((value, i) => value - plucked[from + i]!);
    expect(decibels(peakOf(left) / peakOf(plucked.subarray(from)))).toBeLessThan(-80);
  });
});

describe("a harmonic", () => {
  test.each([2, 3, 4])("with a finger at 1/%d of the string leaves the partials that rest there", (harmonic) => {
    const signal = play({ string: 5, fret: 0, harmonic, pluckMetres: 0.12 }, 2);
    const where = { pluckSeconds: 0.4, fundamentalHz: 110 };
    const level = (n: number) => measurePartial(signal, RATE, { ...where, nearHz: n * 110, reachHz: 10 }).amplitude;
    for (const n of [1, 2, 3, 5].filter((each) => each % harmonic !== 0)) {
      expect(decibels(level(n) / level(harmonic)), `partial ${n}`).toBeLessThan(-30);
    }
  });
});
