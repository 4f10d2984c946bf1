import { describe, expect, test } from "vitest";
import {
  inharmonicity,
  massPerMetre,
  noteFrequencyHz,
  type StringSpec,
  soundingString,
  tensionNewtons,
  usualStringSet,
} from "../../src/strings/string-set.ts";

const PLAIN_10: StringSpec = { openFrequencyHz: 329.63, gaugeMetres: 0.01 * 0.0254, wound: false };
const LOW_E = usualStringSet().strings[5]!;

describe("the usual strings", () => {
  test("are tuned E4 B3 G3 D3 A2 E2 in equal temperament from A = 440 Hz", () => {
    const open = usualStringSet().strings.map((string) => Number(string.openFrequencyHz.toFixed(2)));
    expect(open).toEqual([329.63, 246.94, 196.0, 146.83, 110.0, 82.41]);
    expect(noteFrequencyHz(69)).toBe(440);
  });

  test("carry between 60 N and 90 N each, as a light set does (common practice, no source)", () => {
    const set = usualStringSet();
    for (const string of set.strings) {
      expect(tensionNewtons(string, set.scaleMetres)).toBeGreaterThan(60);
      expect(tensionNewtons(string, set.scaleMetres)).toBeLessThan(90);
    }
  });

  test("can be edited one string at a time without touching the others", () => {
    const set = usualStringSet();
    const heavier = { ...set, strings: set.strings.with(0, { ...set.strings[0]!, gaugeMetres: 0.0003 }) };
    expect(tensionNewtons(heavier.strings[0]!, 0.648)).toBeGreaterThan(tensionNewtons(set.strings[0]!, 0.648));
    expect(soundingString(heavier, 2, 0)).toEqual(soundingString(set, 2, 0));
  });
});

describe("tension", () => {
  test("of a plain 0.010 at 25.5 in is 72.53 N for steel of 7850 kg/m³", () => {
    expect(tensionNewtons(PLAIN_10, 0.6477)).toBeCloseTo(72.53, 1);
  });

  test("agrees within 0.7 % with the 72.06 N (16.2 lbf) of a published unit weight for a plain 0.010", () => {
    // calculatorlib.com, guitar string tension: 2.215e-5 lb/in at 25.5 in and 329.63 Hz; its density is 0.7 % under steel's.
    expect(Math.abs(tensionNewtons(PLAIN_10, 0.6477) / 72.06 - 1)).toBeLessThan(0.007);
  });

  test("rises about 6 % from a 24.75 in to a 25.5 in scale (friendlycalc.com, string tension)", () => {
    expect(tensionNewtons(PLAIN_10, 25.5) / tensionNewtons(PLAIN_10, 24.75)).toBeCloseTo(1.0615, 4);
  });
});

describe("inharmonicity", () => {
  test("of a plain 0.010 at 647.7 mm and 329.63 Hz is 1.3256e-5", () => {
    expect(inharmonicity(PLAIN_10, 0.6477) / 1.32556e-5).toBeCloseTo(1, 4);
  });

  test("agrees within 0.1 % with McFerrin's constant, 3.4e13·d²/(f²·L⁴) cents per n² in centimetres", () => {
    // R. Brekne quoting McFerrin p. 43, pianotech list, 2002-01-05: B = 2c/1731; 3.401e13 is its unrounded constant.
    const centsPerSquare = (3.401e13 * 0.0254 ** 2) / (329.63 ** 2 * 64.77 ** 4);
    expect(inharmonicity(PLAIN_10, 0.6477) / ((2 * centsPerSquare) / 1731)).toBeCloseTo(1, 3);
  });

  test("of a wound string is twice that of its core under the whole string's tension", () => {
    const core = LOW_E.coreMetres!;
    const bare = { ...LOW_E, gaugeMetres: core, wound: false };
    const ratio = inharmonicity(LOW_E, 0.648) / inharmonicity(bare, 0.648);
    expect(ratio).toBeCloseTo((2 * massPerMetre(bare)) / massPerMetre(LOW_E), 12);
  });

  test("of a wound low E is far under that of a plain string of its gauge", () => {
    const plain = { ...LOW_E, wound: false };
    expect(inharmonicity(LOW_E, 0.648)).toBeLessThan(inharmonicity(plain, 0.648) / 10);
  });
});

describe("a fret", () => {
  test("halves the string at twelve, doubles f0 and quadruples B", () => {
    const open = soundingString(usualStringSet(), 4, 0);
    const octave = soundingString(usualStringSet(), 4, 12);
    expect(octave.lengthMetres).toBeCloseTo(open.lengthMetres / 2, 12);
    expect(octave.fundamentalHz).toBeCloseTo(2 * open.fundamentalHz, 9);
    expect(octave.inharmonicity / open.inharmonicity).toBeCloseTo(4, 9);
  });

  test.each([
    [0, 0, "string: 0 given, expected 1 to 6"],
    [7, 0, "string: 7 given, expected 1 to 6"],
    [1.5, 0, "string: 1.5 given, expected 1 to 6"],
    [1, -1, "fret: -1 given, expected 0 (open) to 36"],
    [1, Number.NaN, "fret: NaN given, expected 0 (open) to 36"],
  ])("on string %d at %d is refused where there is none", (string, fret, message) => {
    expect(() => soundingString(usualStringSet(), string, fret)).toThrow(message);
  });
});
