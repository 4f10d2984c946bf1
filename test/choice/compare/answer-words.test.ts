import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { effort } from "../../effort.ts";
import { onePickup } from "../../fixtures/circuits.ts";
import {
  anyChange,
  CHANGES,
  type Compared,
  changeComparisons,
  compared,
  plain,
  scenarioComparisons,
  twoSettings,
} from "./comparisons.ts";
import { expectAnswer, expectEnglish, expectHeardBands, expectNoContradiction, expectOrder } from "./wording.ts";

const SCENARIOS = scenarioComparisons();
const GENERATED = changeComparisons();
const ALL = [...SCENARIOS, ...GENERATED].map((each) => [each.title, each] as const);

describe.each(ALL)("the answer about %s", (_title, told: Compared) => {
  it("gives the largest difference that is heard, and calls it what it is", () => expectAnswer(told));

  it("puts the settings in the order of what is heard", () => expectOrder(told));

  it("says of no row what its figure speaks against", () => expectNoContradiction(told));

  it("lets no band decide that strings and speaker leave nothing in", () => expectHeardBands(told));

  it("is English, in the trade's words, without names from the build file", () => expectEnglish(told));
});

describe("the answer about any change", () => {
  it("of a cap, a pot, a pickup, a treble bleed, a lead or several holds to all that", () => {
    fc.assert(
      fc.property(anyChange, ({ change, sweep, names }) => {
        const told = compared("any", [plain(), change], sweep);
        for (const expectIt of [expectAnswer, expectOrder, expectNoContradiction, expectHeardBands, expectEnglish])
          expectIt(told);
        for (const name of names) expect(told.told.answer).toContain(name);
      }),
      { numRuns: effort(8, 300) },
    );
  });
});

describe("the first sentence", () => {
  test.each(CHANGES.map(([what, names], index) => [what, names, index] as const))(
    "of %s names it",
    (_what, names, index) => {
      expect(GENERATED[index]!.told.answer).toMatch(names);
    },
  );

  it("names no dial that changes nothing there, and the list tells such settings as one", () => {
    // The middle pickup has no tone control.
    const sweep = { lever: [3, 5], tone: [2, 6, 10] };
    const { answer, verdict } = compared("middle", [plain(), plain({ volume: "500k" })], sweep, {}, "middle").told;
    expect(answer).toMatch(/with the middle: \+/);
    expect(verdict).toMatch(/position 3 \(middle\), tone \d+, volume 10, and 2 more settings there: \+/);
    const neck = compared("neck", [plain(), plain({ volume: "500k" })], sweep, {}, "neck").told;
    expect(neck.answer).toMatch(/with the neck \(tone 10\): \+/);
  });

  it("begins with what the question speaks of first, where that is heard, and else with the most different", () => {
    const positions = { lever: [1, 2, 3, 4, 5] };
    const asked = (question: string, volume = "500k") =>
      compared("asked", [plain(), plain({ volume })], positions, {}, question).told.answer;
    const most = asked("");
    const places = ["bridge", "middle", "neck"].filter((name) => !most.includes(` with the ${name}: `));
    expect(places.length).toBeGreaterThanOrEqual(2);
    for (const name of places) {
      expect(asked(`Does the ${name} need it, or the others?`)).toMatch(new RegExp(` with the ${name}: [+−]`));
    }
    expect(asked("What of position 3?")).toMatch(/ with the middle: /);
    expect(asked("Is it the abridged, or the neckline?")).toBe(most);
    expect(asked("Does the bridge need it?", "250.001k")).toMatch(/ nobody hears|not heard/);
  });

  it("has a verb for what it speaks of: one change is heard, two are", () => {
    const two = GENERATED[CHANGES.findIndex(([what]) => what === "a cap and a pot")]!.told.answer;
    expect(two).toMatch(/ (are|make) /);
    expect(two).not.toMatch(/^[^:]* (is|makes) /);
    expect(GENERATED[0]!.told.answer).toMatch(/^[^:]* (is|makes) /);
  });

  it("of pots says with which pickups, of caps at which tones, of a treble bleed at which volumes", () => {
    const of = (what: string) => GENERATED[CHANGES.findIndex(([name]) => name === what)]!.told.answer;
    expect(of("a volume pot")).toMatch(/ with (the (neck|middle|bridge)|bridge \+ middle|middle \+ neck): [+−]/);
    expect(of("a cap")).toMatch(/ with the tone at 0: −\d.*with the tone at 10 nobody hears it/);
    expect(of("a treble bleed put in")).toMatch(
      / with the volume at 4: \+.*brighter; .*with the volume at 10 nobody hears it/,
    );
  });

  it("answers the examples' questions", () => {
    const of = (id: string) => SCENARIOS.find(({ title }) => title === id)!.told.answer;
    // Do 500 kΩ pots cure the bridge without making neck and middle harsh?
    expect(of("hss-250k-or-500k")).toMatch(
      /^500 kΩ instead of 250 kΩ at the volume, .* plainly heard .*brighter; .*the bridge/,
    );
    // What changes at tone 10, and does anything change at 9?
    expect(of("no-load-tones")).toMatch(
      /^A no-load track .* with the tone at 10 .*with the tone at 5 and 9 nobody hears it/,
    );
    // Does the resistor bring the bridge to where 250 kΩ pots would, and does the neck notice?
    expect(of("resistor-for-the-single-coil")).toMatch(
      / with the bridge: −.* duller; .*; with the neck nobody hears it/,
    );
    // At which volume settings does the move let more treble through?
    expect(of("tone-before-or-after-volume")).toMatch(
      / with the volume at 6 .*brighter; with the volume at 4 and 8 it also gets brighter.*at 10 nobody/,
    );
    // At which tone settings can the two caps be told apart, and by how much?
    expect(of("tone-cap-22-or-47")).toMatch(
      / with the upper tone at 0: −.*at 2 it also gets duller, by .*at 6, 8 and 10 nobody hears it/,
    );
    // How do positions 2 and 4 differ in sound, level and hum?
    expect(of("hsh-automatic-splits")).toMatch(
      /; left as they are, the second is up to \d\.\d LU louder; .* dB more hum/,
    );
    // Which of the two keeps the sound most alike from volume 10 down to 3?
    expect(of("which-treble-bleed")).toMatch(
      /^An added 150 kΩ treble bleed resistor keeps the sound more alike from volume 10 down to 3 /,
    );
    // What does the cure cost in sound and in the way the knobs behave?
    expect(of("two-volumes")).toMatch(
      / with the neck volume at 4: \+.*neck volume 0, .* the first is silent and the second is not/,
    );
    // How much of the dullness is the lead alone?
    expect(of("long-cable")).toMatch(
      /^A lead of 9 m .* with the bridge.*duller; with the neck and middle \+ neck it also gets duller/,
    );
  });

  it("names what is turned where one guard is compared with itself", () => {
    const build = readBuild(onePickup());
    expect(twoSettings(build, [{ tone: 10 }, { tone: 0 }]).told.answer).toMatch(
      /^The tone at 0 instead of 10 makes another sound /,
    );
    const positions = twoSettings(plain(), [{ lever: 1 }, { lever: 5 }]).told.answer;
    expect(positions).toMatch(/^Position 5 instead of position 1 makes another sound /);
  });

  it("says plainly that nothing is heard, and where all is silent", () => {
    const build = plain();
    const same = compared("same", [build, build], { tone: [10, 5, 0] }).told;
    expect(same.answer).toBe("What differs between the two is not heard in any of 3 settings: less than 0.01 dB.");
    expect(same.verdict).toMatch(/No difference can be heard in any of 3 settings\.$/);
    const alone = readBuild(onePickup());
    expect(compared("muted", [alone, alone], { volume: [0] }).told.verdict).toBe("Both are silent.");
  });
});
