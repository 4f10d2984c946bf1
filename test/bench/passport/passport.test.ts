import { describe, expect, test } from "vitest";
import { passportOf } from "../../../src/bench/passport/passport.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { PresolderError } from "../../../src/errors.ts";
import { scenarioBuilds } from "../scenario-builds.ts";

const HSS = {
  presolder: 1,
  title: "A guard",
  plan: {
    layout: "lever-5-two-tone",
    pickups: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "humbucker-medium" },
    volume: "250k",
    tones: [
      { pot: "250k", cap: "22n", pickups: ["neck"] },
      { pot: "250k", cap: "22n", pickups: ["bridge"] },
    ],
    split: { pickup: "bridge", by: "tone2", keeps: "screw" },
  },
};
const ASKED = { temperature: 20, noted: {}, heights: {}, drawer: [] };
const passport = (more: object = {}) => passportOf(readBuild(HSS), { ...ASKED, ...more });

function faultOf(run: () => unknown) {
  try {
    run();
  } catch (error) {
    if (error instanceof PresolderError) return error.faults[0];
    throw error;
  }
  return undefined;
}

describe("a guard's passport", () => {
  test("says what each position sounds, and only those that a lesser switch changes once more", () => {
    expect(passport().positions.map(({ position }) => position)).toEqual([
      ...["1", "2", "3", "4", "5"],
      ...["1, lower tone up", "2, lower tone up"],
    ]);
    expect(passport().positions[5]!.sounds).toContain("screw coil");
  });

  test("names every part that is bought, and no point of the guitar", () => {
    const names = passport().parts.map(({ part }) => part);
    expect(names).toContain("volume");
    expect(names).not.toContain("claw");
  });

  test("tells what a pot's meter reading was beside its value", () => {
    const build = readBuild(HSS);
    const volume = { ...build.parts.volume!, measured: 238_000 } as (typeof build.parts)[string];
    const parts = passportOf({ ...build, parts: { ...build.parts, volume } }, ASKED).parts;
    expect(parts.find(({ part }) => part === "volume")!.what).toMatch(/^250 kΩ pot.*measured 238 kΩ$/);
  });

  test("holds what was noted to what should be read", () => {
    const [first, , , , last] = passport().readings;
    const noted = { [first!.label]: "9k9", [last!.label]: "5k9" };
    const { readings } = passport({ noted });
    expect(readings.map(({ noted: text, fits }) => [text, fits])).toEqual([
      ["9k9", false],
      [null, null],
      [null, null],
      [null, null],
      ["5k9", true],
    ]);
  });

  test("counts what stays over in the drawer", () => {
    const cap = { kind: "cap", capacitance: 22e-9 };
    expect(passport({ drawer: [{ part: cap, quantity: 3 }] }).staysOver).toMatchObject([{ quantity: 1 }]);
  });

  test("of every example has a sound for every position and a reading for each", () => {
    for (const { name, build } of scenarioBuilds) {
      const { positions, readings, parts } = passportOf(build, ASKED);
      expect(positions.length, name).toBeGreaterThanOrEqual(readings.length);
      expect(readings.length, name).toBeGreaterThan(0);
      expect(parts.length, name).toBeGreaterThan(3);
    }
  });

  test.each([
    ["a label that no reading has", { noted: { "jack, lever 9": "5k" } }, "noted.jack, lever 9"],
    ["a height of what is no pickup", { heights: { volume: { bass: 0.002, treble: 0.002 } } }, "heights.volume"],
  ])("refuses %s by its field", (_what, more, path) => {
    expect(faultOf(() => passport(more))?.path).toBe(path);
  });

  test("refuses a reading that is none, with what was expected", () => {
    const { label } = passport().readings[0]!;
    expect(faultOf(() => passport({ noted: { [label]: "about six" } }))).toMatchObject({ path: `noted.${label}` });
  });
});
