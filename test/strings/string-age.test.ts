import { describe, expect, test } from "vitest";
import { REFERENCE_COIL } from "../../src/strings/comb.ts";
import { decayPerSecond, STRING_AGES, type StringAge } from "../../src/strings/decay.ts";
import { soundingString, usualStringSet } from "../../src/strings/string-set.ts";
import { renderPhrase } from "../../src/strings/synth.ts";
import { centroidHz } from "./centroid.ts";

const RATE = 48_000;

function brightness(age: StringAge, string: number): number {
  const strings = { ...usualStringSet(), age };
  const notes = [{ timeSeconds: 0, string, fret: 0, velocity: 1, durationSeconds: 3 }];
  const [samples] = renderPhrase({ name: "", description: "", seconds: 2, notes }, [REFERENCE_COIL], strings, RATE);
  return centroidHz(samples!, RATE);
}

describe("strings of an age", () => {
  test.each([1, 2, 3, 4, 5, 6])("sound darker the older they are: string %d", (string) => {
    const [fresh, used, old] = STRING_AGES.map((age) => brightness(age, string));
    expect(fresh).toBeGreaterThan(used!);
    expect(used).toBeGreaterThan(old!);
  });

  test("darken more where they are wound than where they are plain", () => {
    const loss = (string: number) => brightness("new", string) / brightness("old", string);
    const [plain, wound] = [[1, 2, 3].map(loss), [4, 5, 6].map(loss)];
    expect(Math.min(...wound) - 1).toBeGreaterThan(1.5 * (Math.max(...plain) - 1));
  });

  test("lose nothing of their lowest tones, which the supports take", () => {
    const at = (age: StringAge) => decayPerSecond(soundingString({ ...usualStringSet(), age }, 6, 0).decay, 0);
    expect(at("old")).toBe(at("new"));
  });

  test("are used ones where nobody says", () => {
    expect(soundingString(usualStringSet(), 5, 3)).toEqual(soundingString({ ...usualStringSet(), age: "used" }, 5, 3));
  });
});
