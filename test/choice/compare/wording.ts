import { expect } from "vitest";
import type { ComparisonRow } from "../../../src/choice/compare/compare.ts";
import { AUDIBILITY_WORDS } from "../../../src/choice/compare/verdict.ts";
import { FLOOR_DB, heardSound } from "../../../src/choice/ear/heard-sound.ts";
import { energiesFor } from "../../../src/choice/guard.ts";
import { SLICES } from "../../../src/choice/slices.ts";
import type { Compared } from "./comparisons.ts";

const isMuted = ({ verdict }: ComparisonRow) => verdict.includes("silent");
const sizeOf = (row: ComparisonRow) => Math.abs(row.weighed.largest.difference);

/** Jesteadt, Wier and Green's 0.5 and 1.25 dB, and the service's own 3 and 6. */
function classOf(db: number): ComparisonRow["audible"] {
  if (db < 0.5) return "none";
  if (db < 1.25) return "edge";
  if (db < 3) return "side-by-side";
  return db < 6 ? "plain" : "another-sound";
}

/** The figure that a sentence gives first. */
const figureIn = (words: string) => Number(/(\d+(?:\.\d+)?) dB at /.exec(words)?.[1]);

/** Two figures that count; one that would read as of the next class is cut and not rounded. */
function expectFigure(words: string, db: number): void {
  if (db < 0.005) expect(words).toContain("less than 0.01 dB");
  else {
    const figure = figureIn(words);
    expect(Math.abs(figure - db), words).toBeLessThanOrEqual(db < 9.95 ? 0.1 : 0.5);
    expect(classOf(figure), words).toBe(classOf(db));
  }
}

/** It gives the largest difference that is heard, and calls it what it is. */
export function expectAnswer({ told: { rows, answer } }: Compared): void {
  const most = rows.filter((row) => !isMuted(row)).reduce((a, b) => (sizeOf(b) > sizeOf(a) ? b : a));
  const figures = answer.slice(answer.search(/[+−]?\d+(?:\.\d+)? dB at |less than 0\.01/));
  expectFigure(figures, sizeOf(most));
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
}

/** It puts the settings in the order of what is heard. */
export function expectOrder({ told: { rows, order, verdict } }: Compared): void {
  expect([...order].sort((a, b) => a - b)).toEqual(rows.map((_, index) => index));
  const sizes = order.map((index) => {
    const row = rows[index]!;
    return isMuted(row) && row.audible === "another-sound" ? 1e3 : sizeOf(row);
  });
  expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
  const listed = /Most different first: (.*?)\.(?= [A-Z]|$)/.exec(verdict)?.[1] ?? "";
  const figures = [...listed.matchAll(/: [+−](\d+(?:\.\d+)?) dB at/g)].map(([, db]) => Number(db));
  expect(figures).toEqual([...figures].sort((a, b) => b - a));
}

/** It says of no row what its figure speaks against. */
export function expectNoContradiction({ told: { rows, verdict } }: Compared): void {
  for (const row of rows) {
    if (isMuted(row)) continue;
    expect(row.audible).toBe(classOf(sizeOf(row)));
    expect(row.verdict).toContain(`: ${AUDIBILITY_WORDS[row.audible]}`);
    expectFigure(row.verdict, sizeOf(row));
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
}

/** It lets no band decide that strings and speaker leave nothing in. */
export function expectHeardBands({ told: { rows }, sides }: Compared): void {
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
}

/** It is English, in the trade's words, without names from the build file. */
export function expectEnglish({ told: { rows, answer, verdict }, sides }: Compared): void {
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
}
