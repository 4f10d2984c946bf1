import { expect, it } from "vitest";
import { effort } from "../../effort.ts";
import { tapTrial } from "./tap-trials.ts";

const TRIALS = effort(4, 24);

it(`names what is hidden in ${TRIALS} random guards, tapped by random hands: a pickup turned, half of one dead, positions reversed, or nothing`, () => {
  const trials = Array.from({ length: TRIALS }, (_, i) => tapTrial(201 + i));
  const missed = trials.filter(({ named }) => !named).map(({ words }) => words);
  // Of 200 others 97 % were named; what half a coil leaks through its neighbour may look like a weak whole one.
  expect(missed.length, missed.join("\n")).toBeLessThanOrEqual(Math.floor(0.1 * TRIALS));
}, 120_000);
