import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createUniform } from "../../../src/choice/uniform.ts";
import { guessingProbability } from "../../../src/page/blind/guessing.ts";
import { fixedRule } from "../../../src/page/board/fixed-rule.ts";
import { NamingTrials } from "../../../src/page/board/naming-trials.ts";
import { chancesOf, hearingProbability, sequentialRule } from "../../../src/page/board/stopping.ts";
import { namingResult } from "../../../src/page/board/test-words.ts";

const COUNTS = Array.from({ length: 11 }, (_, index) => index + 2);

describe("the probability of naming as many by guessing", () => {
  it("is what going through all ways to answer counts", () => {
    // Three candidates, four trials: 81 ways, of which 1 has four right, 4·2 three, 6·4 two.
    expect(guessingProbability(4, 4, 3)).toBe(1 / 81);
    expect(guessingProbability(3, 4, 3)).toBe(9 / 81);
    expect(guessingProbability(2, 4, 3)).toBe(33 / 81);
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 4 }),
        fc.integer({ min: 1, max: 6 }),
        fc.nat(6),
        (candidates, trials, right) => {
          let ways = 0;
          for (let way = 0; way < candidates ** trials; way++) {
            const digits = Array.from({ length: trials }, (_, k) => Math.floor(way / candidates ** k) % candidates);
            if (digits.filter((digit) => digit === 0).length >= right) ways += 1;
          }
          expect(guessingProbability(right, trials, candidates)).toBeCloseTo(ways / candidates ** trials, 14);
        },
      ),
    );
  });
});

describe("the test that may end after any trial", () => {
  it.each(COUNTS)("of %i sounds misleads at most one in twenty, either way", (candidates) => {
    const rule = sequentialRule(candidates);
    const guessing = chancesOf(rule, 1 / candidates);
    const hearing = chancesOf(rule, hearingProbability(candidates));
    expect(guessing.apart).toBeLessThanOrEqual(0.05);
    expect(hearing.alike).toBeLessThanOrEqual(0.05);
    for (const { apart, alike, open } of [guessing, hearing]) expect(apart + alike + open).toBeCloseTo(1, 12);
    expect(hearing.apart).toBeGreaterThan(0.9);
  });

  it("ends after eight right ones in a row of two sounds, and after two of twelve", () => {
    // ln 20 over ln(0.75/0.5) is 7.4; over ln(0.5417/0.0833), 1.6.
    const [two, twelve] = [sequentialRule(2), sequentialRule(12)];
    expect([two.outcome(7, 7), two.outcome(8, 8)]).toEqual([undefined, "apart"]);
    expect([twelve.outcome(1, 1), twelve.outcome(2, 2)]).toEqual([undefined, "apart"]);
  });

  it("has the chances that played out tests have", () => {
    const uniform = createUniform(11);
    const rule = sequentialRule(3);
    const [tests, counted] = [20_000, { apart: 0, alike: 0, open: 0 }];
    for (let test = 0; test < tests; test++) {
      const trials = new NamingTrials(3, rule, (count) => Math.floor(uniform() * count));
      while (trials.outcome === undefined) trials.answer(Math.floor(uniform() * 3));
      counted[trials.outcome] += 1;
    }
    const exact = chancesOf(rule, 1 / 3);
    // Four standard errors.
    for (const end of ["apart", "alike", "open"] as const)
      expect(Math.abs(counted[end] / tests - exact[end])).toBeLessThan(
        4 * Math.sqrt((exact[end] * (1 - exact[end])) / tests) + 1e-4,
      );
  });
});

describe("a naming test", () => {
  it("keeps which was taken for which and ends when its rule says so", () => {
    const played = [0, 1, 2, 2, 0];
    const trials = new NamingTrials(3, fixedRule(3, 4), () => played.shift()!);
    for (const named of [0, 2, 2, 2]) {
      expect(trials.outcome).toBeUndefined();
      trials.answer(named);
    }
    expect([trials.right, trials.answered, trials.outcome]).toEqual([3, 4, "alike"]);
    expect(trials.answers).toEqual([
      [1, 0, 0],
      [0, 0, 1],
      [0, 0, 2],
    ]);
    trials.answer(1);
    expect(trials.answered).toBe(4);
    expect(namingResult(trials, false)).toEqual({
      count: "3 of 4 right, 3 sounds to choose from.",
      luck: "Somebody who only guesses gets at least 3 right in 11 % of such tests.",
      verdict: "You could not tell them apart: take whichever is less work.",
    });
  });

  it("draws every sound about as often", () => {
    const counts = new Array<number>(12).fill(0);
    const trials = new NamingTrials(12, { outcome: () => undefined });
    for (let trial = 0; trial < 6000; trial++) {
      counts[trials.hidden]! += 1;
      trials.answer(0);
    }
    // 500 each, standard deviation 21.
    for (const count of counts) expect(Math.abs(count - 500)).toBeLessThan(130);
  });
});
