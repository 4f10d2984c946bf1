import { describe, expect, test } from "vitest";
import { METRES_PER_INCH } from "../../src/lengths.ts";
import { REFERENCE_COIL } from "../../src/strings/comb.ts";
import { massPerMetre, type StringSpec, soundingString, usualStringSet } from "../../src/strings/string-set.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { decibels, measurePartial } from "./spectrum.ts";

const RATE = 48_000;
const SCALE = 0.648;

/** Volts of the fundamental of one open string, plucked with a force of 1. */
function fundamentalOf(spec: StringSpec): number {
  const strings = { scaleMetres: SCALE, strings: [spec] };
  const notes = [
    { timeSeconds: 0.02, string: 1, fret: 0, velocity: 1, durationSeconds: 2, slantDegrees: 0, scrape: 0 },
  ];
  const [samples] = renderPhrase({ name: "", description: "", seconds: 1, notes }, [REFERENCE_COIL], strings, RATE);
  const { openFrequencyHz } = spec;
  const where = { pluckSeconds: 0.02, fundamentalHz: openFrequencyHz, nearHz: openFrequencyHz, reachHz: 20 };
  return measurePartial(samples!, RATE, where).amplitude;
}

const plain = (inches: number, openFrequencyHz: number): StringSpec => ({
  openFrequencyHz,
  gaugeMetres: inches * METRES_PER_INCH,
  wound: false,
});

/** kg/s, written out here again: a force F moves a string at 2F/πZ. */
const impedanceOf = (spec: StringSpec) => massPerMetre(spec) * 2 * SCALE * spec.openFrequencyHz;

describe("plain strings under one coil", () => {
  const strings = [plain(0.009, 329.63), plain(0.011, 246.94), plain(0.016, 196), plain(0.02, 196)];

  test("at equal speed give volts as their cross-section, d², and neither as d nor as tension (abstract of AES e-library 16938)", () => {
    const perSpeed = strings.map((spec) => (fundamentalOf(spec) * impedanceOf(spec)) / spec.gaugeMetres ** 2);
    for (const each of perSpeed) expect(each / perSpeed[0]!).toBeCloseTo(1, 3);
  });

  test("at equal force give less than that, as the thick one moves more slowly", () => {
    expect(decibels(fundamentalOf(strings[2]!) / fundamentalOf(strings[0]!))).toBeCloseTo(
      decibels((0.016 / 0.009) ** 2 * (impedanceOf(strings[0]!) / impedanceOf(strings[2]!))),
      1,
    );
  });
});

describe("a wound string", () => {
  test("gives more than its core alone would on it, and less than its whole steel", () => {
    const wound = usualStringSet(SCALE).strings[5]!;
    const perSpeed = fundamentalOf(wound) * impedanceOf(wound);
    const reference = plain(0.01, 82.41);
    const area = (perSpeed / (fundamentalOf(reference) * impedanceOf(reference))) * reference.gaugeMetres ** 2;
    expect(area).toBeGreaterThan(wound.coreMetres! ** 2);
    expect(area).toBeLessThan(wound.gaugeMetres ** 2);
  });

  test("of the usual set stands within 3 dB of the plain ones' mean: no string of a chord is lost", () => {
    const levels = usualStringSet().strings.map((_, i) => decibels(soundingString(usualStringSet(), i + 1, 0).level));
    const mean = levels.reduce((sum, level) => sum + level, 0) / 6;
    for (const level of levels) expect(Math.abs(level - mean)).toBeLessThan(3);
  });
});
