import { describe, expect, test } from "vitest";
import { METRES_PER_INCH } from "../../src/lengths.ts";
import { partialNumberAt, REFERENCE_COIL } from "../../src/strings/comb.ts";
import { type PlaneMode, planeModes, TWO_PLANES_UP_TO_HZ } from "../../src/strings/planes.ts";
import type { Note } from "../../src/strings/score.ts";
import { type SoundingString, soundingString, usualStringSet } from "../../src/strings/string-set.ts";
import { strokeOf } from "../../src/strings/stroke.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { MEASURED_STRINGS } from "./measured-strings.ts";
import { decibels, measurePartial, peakOf } from "./spectrum.ts";

const RATE = 48_000;
const SET = usualStringSet();
const NOTE: Note = { timeSeconds: 0.02, string: 5, fret: 0, velocity: 1, durationSeconds: 12, scrape: 0 };

function play(note: Partial<Note>, seconds = 3): Float32Array {
  const phrase = { name: "note", description: "", seconds, notes: [{ ...NOTE, ...note }] };
  return renderPhrase(phrase, [REFERENCE_COIL], SET, RATE)[0]!;
}

/** Level of the planes together, in dB, at a time. */
function levelAt(planes: readonly PlaneMode[], seconds: number): number {
  let [re, im] = [0, 0];
  for (const { amplitude, decayPerSecond, frequencyHz } of planes) {
    const size = amplitude * Math.exp(-decayPerSecond * seconds);
    const turn = 2 * Math.PI * (frequencyHz - planes[0]!.frequencyHz) * seconds;
    re += size * Math.cos(turn);
    im += size * Math.sin(turn);
  }
  return decibels(Math.hypot(re, im));
}

/** dB a second, straight through the levels of a stretch. */
function slopeOf(planes: readonly PlaneMode[], fromSeconds: number, toSeconds: number): number {
  const times = Array.from({ length: 60 }, (_, i) => fromSeconds + ((toSeconds - fromSeconds) * i) / 59);
  const levels = times.map((time) => levelAt(planes, time));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [time, level] = [mean(times), mean(levels)];
  const rise = times.reduce((sum, each, i) => sum + (each - time) * (levels[i]! - level), 0);
  return rise / times.reduce((sum, each) => sum + (each - time) ** 2, 0);
}

/** Seconds for 60 dB as the recordings were read: from the first 25 dB, or 1.9 s of them. */
function fallTime(planes: readonly PlaneMode[]): number {
  const start = levelAt(planes, 0);
  let until = 0.02;
  while (until < 1.9 && levelAt(planes, until) > start - 25) until += 0.01;
  return -60 / slopeOf(planes, 0, until);
}

/** What would be a partial at that frequency, plucked where it is strongest. */
function planesAt(string: SoundingString, hertz: number): PlaneMode[] {
  const n = partialNumberAt(string, hertz);
  return planeModes(string, { ...strokeOf({}, string), placeMetres: string.lengthMetres / (2 * n) }, n);
}

describe("the two planes of a string", () => {
  test("together fall as long as the measured strings, within a factor of 1.5, in nine tenths of strings and bands", () => {
    const ratios = MEASURED_STRINGS.flatMap(({ openFrequencyHz, gaugeInches, wound, fallTimes }) => {
      const spec = { openFrequencyHz, gaugeMetres: gaugeInches * METRES_PER_INCH, wound };
      const string = soundingString({ scaleMetres: 0.648, strings: [spec] }, 1, 0);
      return fallTimes.map(([hertz, seconds]) => fallTime(planesAt(string, hertz)) / seconds);
    });
    expect(ratios).toHaveLength(54);
    expect(ratios.filter((ratio) => ratio > 1 / 1.5 && ratio < 1.5).length / 54).toBeGreaterThan(0.9);
  });

  test("give two stages: string 1's fundamental falls less than half as fast once the plane towards the pickup has died", () => {
    const planes = planesAt(soundingString(SET, 1, 0), 329.63);
    expect(slopeOf(planes, 4, 6) / slopeOf(planes, 0, 0.6)).toBeLessThan(0.5);
  });

  test("beat: the tenth partial of string 5 swells again by 2 dB or more between its weakest and its next strongest", () => {
    const planes = planesAt(soundingString(SET, 5, 0), 1100);
    const decay = (seconds: number) =>
      levelAt(planes, seconds) + decibels(Math.E) * planes[0]!.decayPerSecond * seconds;
    const beat = 1 / (planes[1]!.frequencyHz - planes[0]!.frequencyHz);
    expect(beat).toBeGreaterThan(0.3);
    expect(decay(beat) - decay(beat / 2)).toBeGreaterThan(2);
  });

  test("are one mode above the limit, as loud at the pluck as the two would be", () => {
    const string = soundingString(SET, 1, 0);
    const [low, high] = [planesAt(string, TWO_PLANES_UP_TO_HZ - 1), planesAt(string, TWO_PLANES_UP_TO_HZ + 1)];
    expect([low.length, high.length]).toEqual([2, 1]);
    const total = (planes: readonly PlaneMode[]) => planes.reduce((sum, { amplitude }) => sum + amplitude, 0);
    expect(total(high) / total(low)).toBeCloseTo(1, 3);
  });
});

describe("a rendered pluck", () => {
  test("at a slant is what it is straight towards the pickup and across it, by cosine and sine", () => {
    const [straight, across, slanted] = [0, 90, 35].map((slantDegrees) => play({ slantDegrees }));
    const slant = (35 * Math.PI) / 180;
    const left = slanted!.map((value, i) => value - Math.cos(slant) * straight![i]! - Math.sin(slant) * across![i]!);
    expect(decibels(peakOf(left) / peakOf(slanted!))).toBeLessThan(-90);
  });

  test("across the pickup gives a fifth of the level, 0.15 % sharp and falling more slowly", () => {
    const where = { pluckSeconds: NOTE.timeSeconds, fundamentalHz: 110, nearHz: 220, reachHz: 20 };
    const [towards, across] = [0, 90].map((slantDegrees) => measurePartial(play({ slantDegrees }), RATE, where));
    expect(across!.amplitude / towards!.amplitude).toBeCloseTo(0.2, 3);
    expect(across!.frequencyHz / towards!.frequencyHz).toBeCloseTo(1.0015, 5);
    expect(across!.decayPerSecond).toBeLessThan(towards!.decayPerSecond);
  });
});
