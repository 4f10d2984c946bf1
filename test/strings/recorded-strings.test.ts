import { describe, expect, test } from "vitest";
import { REFERENCE_COIL } from "../../src/strings/comb.ts";
import type { StringAge } from "../../src/strings/decay.ts";
import type { Note } from "../../src/strings/score.ts";
import { usualStringSet } from "../../src/strings/string-set.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { type Bands, bandsOf, centroidIn, fallTimes, levelsIn, median, OCTAVES, slope } from "./band-decay.ts";
import { RECORDED, recordedNote } from "./recorded-notes.ts";

const RATE = 44_100;

function synthesised(age: StringAge, own: Partial<Note> = {}): Bands[] {
  return RECORDED.map(([, string, fret]) => {
    const notes = [{ timeSeconds: 0, string, fret, velocity: 1, durationSeconds: 9, ...own }];
    const phrase = { name: "", description: "", seconds: 4.2, notes };
    const [samples] = renderPhrase(phrase, [REFERENCE_COIL], { ...usualStringSet(), age }, RATE);
    return bandsOf({ samples: samples!, sampleRateHz: RATE });
  });
}

const recorded = RECORDED.map(([name]) => bandsOf(recordedNote(name)));
const ours = { used: synthesised("used"), old: synthesised("old") };

/** Of every note and octave that both have: how much longer ours ring. */
function ratios(bands: readonly Bands[]): number[] {
  return bands.flatMap((one, note) => {
    const theirs = fallTimes(recorded[note]!);
    return fallTimes(one).flatMap((seconds, octave) => {
      const other = theirs[octave];
      return seconds === undefined || other === undefined ? [] : [seconds / other];
    });
  });
}
/** The same by octave: the median of each. */
function octaveRatios(bands: readonly Bands[]): number[] {
  const known = bands.map((one, note) =>
    fallTimes(one).map((seconds, octave) => [seconds, fallTimes(recorded[note]!)[octave]]),
  );
  return OCTAVES.slice(1).map((_, octave) =>
    median(known.flatMap((row) => (row[octave]![0] && row[octave]![1] ? [row[octave]![0] / row[octave]![1]] : []))),
  );
}

const within = (values: readonly number[], factor: number) =>
  values.filter((value) => value < factor && value > 1 / factor).length / values.length;
const centroidFalls = (bands: readonly Bands[]) =>
  bands.map((one) => centroidIn(one, 1.5, 2) / centroidIn(one, 0.02, 0.12));
/** How steeply all of it falls late, beside early. */
const stages = (bands: readonly Bands[]) =>
  bands.map((one) => slope(levelsIn(one, 1.5, 3)) / slope(levelsIn(one, 0.05, 0.6)));

/**
 * A single note's decay in a band is off by a factor of three in itself (dead spots, beats), and what the unknown pickup took of
 * the treble says nothing of the string: so decays and falls are compared, over all notes, and no spectrum as such.
 */
describe("strings beside recorded ones of another guitar", () => {
  test("ring as long: all notes and octaves within a factor of 1.6 in the middle for used strings and of 1.25 for old ones", () => {
    for (const [age, bound] of [
      ["used", 1.6],
      ["old", 1.25],
    ] as const) {
      const all = ratios(ours[age]);
      expect(all.length).toBeGreaterThan(60);
      expect(within([median(all)], bound), age).toBe(1);
      expect(within(all, 2.5), age).toBeGreaterThan(0.7);
      expect(within(all, 4), age).toBeGreaterThan(0.9);
    }
  });

  test("do so in every octave within a factor of 2 for old strings; used ones ring up to 2.5 times as long above 1.4 kHz", () => {
    const [used, old] = [octaveRatios(ours.used), octaveRatios(ours.old)];
    expect(within(used.slice(0, 4), 1.6)).toBe(1);
    expect(within(used, 2.5)).toBe(1);
    expect(within(old, 2)).toBe(1);
  });

  test("darken alike: two thirds of the centroid is left after 1.5 s, within a factor of 1.2, of used and of old strings", () => {
    const theirs = median(centroidFalls(recorded));
    expect(theirs).toBeGreaterThan(0.55);
    expect(theirs).toBeLessThan(0.8);
    for (const bands of [ours.used, ours.old]) expect(within([median(centroidFalls(bands)) / theirs], 1.2)).toBe(1);
  });

  test("fall in two stages: late less than 0.7 times as steeply as early, in the middle, and nearly every note in some measure", () => {
    for (const bands of [recorded, ours.used, ours.old]) {
      expect(median(stages(bands))).toBeLessThan(0.7);
      expect(stages(bands).filter((ratio) => ratio < 0.85).length).toBeGreaterThanOrEqual(11);
    }
    // One plane alone, as a pluck straight towards the pickup has it, would not.
    expect(median(stages(synthesised("used", { slantDegrees: 0 })))).toBeGreaterThan(0.8);
  });
});
