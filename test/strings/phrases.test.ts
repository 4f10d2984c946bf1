import { describe, expect, test } from "vitest";
import { PresolderError } from "../../src/errors.ts";
import { type CoilPlace, REFERENCE_COIL } from "../../src/strings/comb.ts";
import { DEFAULT_PHRASE_NAME, PHRASE_NAMES, PHRASES, phraseNamed } from "../../src/strings/phrases.ts";
import { bentUp } from "../../src/strings/pitch-curve.ts";
import type { Note, Phrase } from "../../src/strings/score.ts";
import { usualStringSet } from "../../src/strings/string-set.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { casesOf } from "../effort.ts";
import { cents, decibels, measurePartial, peakOf, rmsOf } from "./spectrum.ts";

const RATE = 48_000;
/** All phrases go through it, in three coils. */
const PHRASE_RATE = 24_000;
const SET = usualStringSet();
const COILS: CoilPlace[] = [
  { ...REFERENCE_COIL, distanceMetres: 0.162 },
  REFERENCE_COIL,
  { ...REFERENCE_COIL, distanceMetres: 0.041, slantMetres: 0.009 },
];

function render(
  notes: readonly Note[],
  seconds: number,
  coils: readonly CoilPlace[] = [REFERENCE_COIL],
): Float32Array[] {
  const phrase: Phrase = { name: "test", description: "", seconds, notes };
  return renderPhrase(phrase, coils, SET, RATE);
}

function sameBits(a: Float32Array, b: Float32Array): boolean {
  return Buffer.from(a.buffer).equals(Buffer.from(b.buffer));
}

const NOTE: Note = { timeSeconds: 0.1, string: 4, fret: 2, velocity: 0.8, durationSeconds: 5 };

describe.each(PHRASES)("the phrase $name", (phrase) => {
  const signals = renderPhrase(phrase, COILS, SET, PHRASE_RATE);
  const firstSample = Math.ceil(Math.min(...phrase.notes.map((note) => note.timeSeconds)) * PHRASE_RATE);

  test("lasts as long as it says, 3 to 10 seconds, and every coil's samples are finite", () => {
    expect(phrase.seconds).toBeGreaterThanOrEqual(3);
    expect(phrase.seconds).toBeLessThanOrEqual(10);
    for (const signal of signals) {
      expect(signal.length).toBe(Math.round(phrase.seconds * PHRASE_RATE));
      expect(signal.every(Number.isFinite)).toBe(true);
    }
  });

  test("peaks between 50 mV and 500 mV at every coil, a swell at half of that (common practice, no source)", () => {
    for (const signal of signals) {
      expect(peakOf(signal)).toBeGreaterThan(phrase.name === "swell" ? 0.025 : 0.05);
      expect(peakOf(signal)).toBeLessThan(0.5);
    }
  });

  test("is silent before its first note, begins without a click and has died away at its end", () => {
    for (const signal of signals) {
      const peak = peakOf(signal);
      expect(peakOf(signal.subarray(0, firstSample))).toBe(0);
      expect(decibels(Math.abs(signal[firstSample + 1]!) / peak + 1e-9)).toBeLessThan(-20);
      expect(peakOf(signal.subarray(-240)) / peak).toBeLessThan(1e-3);
    }
  });

  test("starts no note on a string that is not there nor past the end", () => {
    for (const note of phrase.notes) {
      expect(note.string).toBeGreaterThanOrEqual(1);
      expect(note.string).toBeLessThanOrEqual(6);
      expect(note.timeSeconds + note.durationSeconds).toBeLessThan(phrase.seconds);
    }
  });
});

describe("phrases", () => {
  test("have names of their own, and the default is among them", () => {
    expect(new Set(PHRASE_NAMES).size).toBe(PHRASES.length);
    expect(phraseNamed(DEFAULT_PHRASE_NAME).name).toBe("strum");
  });

  test("are over a minute together: chords and single notes, high and low strings, dead and touched ones, bends and swells", () => {
    expect(PHRASES.reduce((sum, { seconds }) => sum + seconds, 0)).toBeGreaterThan(60);
    const notes = PHRASES.flatMap((phrase) => phrase.notes);
    expect(new Set(notes.map(({ string }) => string)).size).toBe(6);
    expect(Math.max(...notes.map(({ fret }) => fret))).toBeGreaterThan(12);
    for (const gesture of ["muted", "harmonic", "pitch", "swellSeconds"] as const) {
      expect(PHRASES.filter((phrase) => phrase.notes.some((note) => note[gesture])).length, gesture).toBeGreaterThan(0);
    }
  });

  test("that do not exist are refused with the names that do", () => {
    expect(() => phraseNamed("solo")).toThrow(PresolderError);
    expect(() => phraseNamed("solo")).toThrow(/no phrase "solo"; there are strum, pluck/);
  });

  test("have the strum at 0.3 V peak within 3 % on a reference coil at any usual rate", () => {
    for (const rate of casesOf([44_100, 96_000], 1)) {
      const peak = peakOf(renderPhrase(phraseNamed("strum"), [REFERENCE_COIL], SET, rate)[0]!);
      expect(Math.abs(peak / 0.3 - 1), `${peak} V at ${rate} Hz`).toBeLessThan(0.03);
    }
  });

  test("render to the same samples every time, and to the same whatever other coils listen", () => {
    const phrase = phraseNamed("double-stops");
    const together = renderPhrase(phrase, COILS, SET, RATE);
    const again = renderPhrase(phrase, COILS, SET, RATE);
    for (const [coil, signal] of together.entries()) expect(sameBits(again[coil]!, signal)).toBe(true);
    expect(sameBits(renderPhrase(phrase, [COILS[2]!], SET, RATE)[0]!, together[2]!)).toBe(true);
  });
});

describe("a rendered note", () => {
  test("is in proportion to the coil's output and to the velocity, to the last bit of a float", () => {
    const [one, two] = render([NOTE], 1, [REFERENCE_COIL, { ...REFERENCE_COIL, output: 2 }]);
    const louder = render([{ ...NOTE, velocity: 1.6 }], 1)[0]!;
    expect(
      sameBits(
        two!,
        one!.map((value) => 2 * value),
      ),
    ).toBe(true);
    expect(sameBits(louder, two!)).toBe(true);
  });

  test("adds to another as if each were alone", () => {
    const other = { ...NOTE, string: 2, timeSeconds: 0.15 };
    const apart = [render([NOTE], 1)[0]!, render([other], 1)[0]!];
    const worst = render([NOTE, other], 1)[0]!.map((value, i) => value - apart[0]![i]! - apart[1]![i]!);
    expect(peakOf(worst)).toBeLessThan(1e-7);
  });

  test("keeps its place in time between samples: half a sample later is half a sample of phase", () => {
    const measure = (note: Note) => {
      const signal = render([note], 1)[0]!;
      return signal.slice(9600, 9600 + 4800);
    };
    const [early, late] = [measure(NOTE), measure({ ...NOTE, timeSeconds: NOTE.timeSeconds + 1 / RATE })];
    expect(peakOf(early.subarray(0, -1).map((value, i) => value - late[i + 1]!))).toBeLessThan(2e-7);
    const half = measure({ ...NOTE, timeSeconds: NOTE.timeSeconds + 0.5 / RATE });
    expect(rmsOf(half.map((value, i) => value - early[i]!))).toBeGreaterThan(1e-5);
    expect(rmsOf(half.map((value, i) => value - early[i]!))).toBeLessThan(
      rmsOf(late.map((value, i) => value - early[i]!)),
    );
  });

  test("falls 60 dB within 0.15 s of being damped", () => {
    const signal = render([{ ...NOTE, durationSeconds: 0.4 }], 1)[0]!;
    const before = rmsOf(signal.subarray(0.4 * RATE, 0.48 * RATE));
    const after = rmsOf(signal.subarray(0.65 * RATE, 0.7 * RATE));
    expect(decibels(after / before)).toBeLessThan(-60);
  });

  test("under the palm is gone ten times sooner", () => {
    const at = (muted: boolean) => {
      const signal = render([{ ...NOTE, string: 6, fret: 0, muted }], 1)[0]!;
      return decibels(
        rmsOf(signal.subarray(0.6 * RATE, 0.7 * RATE)) / rmsOf(signal.subarray(0.11 * RATE, 0.21 * RATE)),
      );
    };
    expect(at(true)).toBeLessThan(10 * at(false));
  });

  test("is cut off by the next one on its string and not by one on another", () => {
    const tail = (string: number) => {
      const next = { ...NOTE, string, timeSeconds: 0.5, velocity: 1e-9 };
      return rmsOf(render([NOTE, next], 1)[0]!.subarray(0.55 * RATE));
    };
    expect(decibels(tail(4) / tail(3))).toBeLessThan(-80);
  });

  test("bent by two semitones ends two semitones higher", () => {
    const pitch = bentUp(2, 0.1, 0.3);
    const f0 = SET.strings[3]!.openFrequencyHz * 2 ** (2 / 12);
    const signal = render([{ ...NOTE, slantDegrees: 0, pitch }], 1.5)[0]!;
    const raised = f0 * 2 ** (2 / 12);
    const where = { pluckSeconds: 0.5, fundamentalHz: raised, nearHz: raised, reachHz: 20 };
    expect(Math.abs(cents(measurePartial(signal, RATE, where).frequencyHz, raised))).toBeLessThan(1);
  });

  test.each([8_000, 192_000])("is finite and not silent at %d samples a second", (rate) => {
    const phrase: Phrase = { name: "test", description: "", seconds: 0.5, notes: [NOTE] };
    const signal = renderPhrase(phrase, [REFERENCE_COIL], SET, rate)[0]!;
    expect(signal.every(Number.isFinite)).toBe(true);
    expect(rmsOf(signal)).toBeGreaterThan(1e-3);
  });

  test("is refused where the pluck, the rate or the length cannot be, naming it", () => {
    expect(() => render([{ ...NOTE, pluckMetres: 0.7 }], 1)).toThrow(/pluckMetres: 0.7 given, expected between 0 and/);
    expect(() => render([NOTE], 0)).toThrow(/seconds: 0 given/);
    const phrase: Phrase = { name: "test", description: "", seconds: 1, notes: [NOTE] };
    expect(() => renderPhrase(phrase, [REFERENCE_COIL], SET, Number.NaN)).toThrow(/rate: NaN given, expected 8000 to/);
  });
});
