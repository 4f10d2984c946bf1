import { describe, expect, it, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { ComparisonRow } from "../../../src/choice/compare/compare.ts";
import { AUDIBILITY_WORDS } from "../../../src/choice/compare/verdict.ts";
import { FLOOR_DB, heardSound } from "../../../src/choice/ear/heard-sound.ts";
import { energiesFor } from "../../../src/choice/guard.ts";
import { SLICES } from "../../../src/choice/slices.ts";
import { onePickup } from "../../fixtures/circuits.ts";
import {
  CHANGES,
  type Compared,
  changeComparisons,
  compared,
  plain,
  scenarioComparisons,
  twoSettings,
} from "./comparisons.ts";

const SCENARIOS = scenarioComparisons();
const GENERATED = changeComparisons();
const ALL = [...SCENARIOS, ...GENERATED].map((each) => [each.title, each] as const);

const isMuted = ({ verdict }: ComparisonRow) => verdict.includes("silent");
const sizeOf = (row: ComparisonRow) => Math.abs(row.weighed.largest.difference);

/** Jesteadt, Wier and Green's 0.5 and 1.25 dB, and the service's own 3 and 6. */
function classOf(db: number): ComparisonRow["audible"] {
  if (db < 0.5) return "none";
  if (db < 1.25) return "edge";
  if (db < 3) return "side-by-side";
  return db < 6 ? "plain" : "another-sound";
}

/** To two figures that count, as a person would write it. */
function figure(db: number): string {
  const size = Math.abs(db);
  return size < 0.1 ? size.toFixed(2) : size < 9.95 ? size.toFixed(1) : size.toFixed(0);
}

describe.each(ALL)("the answer about %s", (_title, { told, sides }: Compared) => {
  const { rows, order, answer, verdict } = told;
  const sounding = rows.filter((row) => !isMuted(row));
  const most = sounding.reduce((a, b) => (sizeOf(b) > sizeOf(a) ? b : a));

  it("gives the largest difference that is heard, and calls it what it is", () => {
    if (sizeOf(most) >= 0.005) expect(answer).toContain(`${figure(sizeOf(most))} dB at `);
    const said = {
      none: / not heard/,
      edge: /at the edge of hearing/,
      "side-by-side": /heard side by side/,
      plain: /plainly heard/,
      "another-sound": /makes? another sound/,
    };
    // Before the figure stands what is said of it, and nothing of the other classes.
    const [start] = answer.split(": ");
    for (const [audible, words] of Object.entries(said))
      expect(words.test(start!), audible).toBe(most.audible === audible);
  });

  it("puts the settings in the order of what is heard", () => {
    expect([...order].sort((a, b) => a - b)).toEqual(rows.map((_, index) => index));
    const sizes = order.map((index) => {
      const row = rows[index]!;
      return isMuted(row) && row.audible === "another-sound" ? 1e3 : sizeOf(row);
    });
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    const listed = /Most different first: (.*?)\.(?= [A-Z]|$)/.exec(verdict)?.[1] ?? "";
    const figures = [...listed.matchAll(/: [+−](\d+(?:\.\d+)?) dB at/g)].map(([, db]) => Number(db));
    expect(figures).toEqual([...figures].sort((a, b) => b - a));
  });

  it("says of no row what its figure speaks against", () => {
    for (const row of rows) {
      if (isMuted(row)) continue;
      expect(row.audible).toBe(classOf(sizeOf(row)));
      expect(row.verdict).toContain(`: ${AUDIBILITY_WORDS[row.audible]}`);
      if (sizeOf(row) >= 0.005) expect(row.verdict).toContain(`differ by ${figure(sizeOf(row))} dB at `);
      // Steps of a peak are counted where there is one, and where more than a hair is heard.
      if (row.verdict.includes("just-noticeable step")) {
        expect(["plain", "another-sound"]).toContain(row.audible);
        expect(row.peakShift!.q).toBeGreaterThanOrEqual(1);
      }
      const { character, largest } = row.weighed;
      if (row.audible !== "none")
        expect(["brighter", "thicker"].includes(character!), row.verdict).toBe(largest.difference > 0);
    }
    const audible = rows.filter((row) => row.audible !== "none").length;
    if (rows.length > 1)
      expect(verdict).toContain(
        audible === 0 ? "No difference can be heard in any" : `can be heard in ${audible} of ${rows.length}`,
      );
  });

  it("lets no band decide that strings and speaker leave nothing in", () => {
    for (const [index, row] of rows.entries()) {
      if (isMuted(row) || row.audible === "none") continue;
      const band = SLICES.bands.findIndex(({ centre }) => centre === row.weighed.largest.frequency);
      const over = sides.map(({ guard, played, settings }) => {
        const { levelsDb } = heardSound(energiesFor(guard.transfers(settings[index]!), played!));
        return levelsDb[band]! - FLOOR_DB[band]!;
      });
      // What differs by so much must stand out by as much of threshold and room in one of the two.
      expect(Math.max(...over)).toBeGreaterThanOrEqual(sizeOf(row));
      expect(row.weighed.largest.frequency).toBeLessThan(10_000);
    }
  });

  it("is English, in the trade's words, without names from the build file", () => {
    const { parts } = sides[0].guard.build;
    const codes = [...Object.keys(parts), ...Object.keys(sides[1].guard.build.parts)].filter((name) =>
      /[A-Z0-9]/.test(name),
    );
    for (const words of [answer, verdict, ...rows.map((row) => row.verdict)]) {
      for (const code of codes) expect(words).not.toMatch(new RegExp(`\\b${code}\\b`));
      expect(words).not.toMatch(
        /undefined|NaN|Infinity|null|\[object| {2}|\.\.|\b1 settings|\b1\.0 just-noticeable steps|−0\.0+ |the the /,
      );
    }
    expect(verdict.startsWith(answer)).toBe(true);
    expect(answer).toMatch(/^[A-Z0-9].*[^.]\.$/);
    expect(verdict).toMatch(/\.$/);
  });
});

describe("the first sentence", () => {
  test.each(CHANGES.map(([what, names], index) => [what, names, index] as const))(
    "of %s names it",
    (_what, names, index) => {
      expect(GENERATED[index]!.told.answer).toMatch(names);
    },
  );

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
