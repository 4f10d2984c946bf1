import { describe, expect, it } from "vitest";
import type { BeepTold } from "../../../src/bench/switch-finder/question.ts";
import { effort } from "../../effort.ts";
import { Random } from "../../random.ts";
import {
  answerOf,
  followed,
  lugsOf,
  NAMED_TABLES,
  onBench,
  questionOf,
  rotaryTable,
  shuffled,
  wrongPairs,
} from "./switch-on-bench.ts";

const table = (name: string) => NAMED_TABLES.find(([each]) => each === name)![1];

describe("a beep that was misheard", () => {
  it("is named where it contradicts the others, is touched again first, and does not keep the switch from being found", () => {
    const random = new Random(5);
    let contradicted = 0;
    for (let trial = 0; trial < effort(12, 80); trial++) {
      const [name, trade] =
        trial % 3 === 0 ? (["rotary", rotaryTable(2, 5)] as const) : (["dpdt", table("dpdt")] as const);
      const found = onBench(trade, shuffled(lugsOf(name, trade), random));
      const question = questionOf(found);
      const wrong = random.below(4);
      const beeps: BeepTold[] = [];
      for (let touch = 0; touch < 80; touch++) {
        const { done, next, contradictions } = answerOf(question, beeps);
        expect(next !== null || done).toBe(true);
        if (contradictions.length > 0) contradicted++;
        if (done) break;
        const [a, b] = next!.between;
        const heard = found.hears(a, b);
        const misheard = heard.length > 0 ? [] : [1];
        beeps.push({ between: [a, b], positions: touch === wrong ? misheard : heard });
      }
      const { done, tables, contradictions } = answerOf(question, beeps);
      expect(done).toBe(true);
      if (contradictions.length > 0) expect(contradictions.map(({ beep }) => beep)).toContain(wrong);
      if (contradictions.length > 0) expect(wrongPairs(found, tables[0]!.positions)).toEqual([]);
    }
    expect(contradicted).toBeGreaterThan(0);
  });

  it("that leaves one table by chance does not have it told as found: the belief in what is told is nine in ten at least", () => {
    const random = new Random(9);
    let [wrong, trials] = [0, effort(25, 120)];
    for (let trial = 0; trial < trials; trial++) {
      const trade = table("lever-5");
      const found = onBench(trade, shuffled(lugsOf("lever-5", trade), random));
      const misheardAt = random.below(5);
      let touch = 0;
      const hears = (a: string, b: string) => {
        const heard = found.hears(a, b);
        return touch++ === misheardAt ? (heard.length > 0 ? [] : [1, 2]) : heard;
      };
      const beeps = followed({ ...found, hears }, questionOf(found, { errors: 0.03 }));
      const { tables, isKnown } = answerOf(questionOf(found, { errors: 0.03 }), beeps);
      if (isKnown) expect(tables[0]!.probability).toBeGreaterThanOrEqual(0.9);
      if (wrongPairs(found, tables[0]!.positions).length > 0) wrong++;
    }
    expect(wrong / trials).toBeLessThanOrEqual(0.1);
  }, 30_000);

  it("that the same two lugs told both ways is outvoted", () => {
    const found = onBench(table("spdt"), ["A0", "A1", "A2"]);
    const told = (positions: number[]): BeepTold => ({ between: ["1", "2"], positions });
    const beeps: BeepTold[] = [told([2]), told([1]), told([1]), { between: ["1", "3"], positions: [2] }];
    const { tables, contradictions, done } = answerOf(questionOf(found), beeps);
    expect(done).toBe(true);
    expect(wrongPairs(found, tables[0]!.positions)).toEqual([]);
    expect(contradictions).toEqual([{ beep: 0, between: ["1", "2"] }]);
    expect(tables[0]!.probability).toBeGreaterThan(0.9);
  });

  it("is not thought of where errors are said to be none: what contradicts itself is no known switch", () => {
    const found = onBench(table("spdt"), ["A0", "A1", "A2"]);
    const beeps: BeepTold[] = [
      { between: ["1", "2"], positions: [1] },
      { between: ["1", "3"], positions: [1] },
    ];
    expect(answerOf(questionOf(found, { errors: 0 }), beeps).isKnown).toBe(false);
    const doubtful = answerOf(questionOf(found), beeps);
    expect(doubtful.isKnown).toBe(true);
    expect(doubtful.next!.again).toBe(true);
    expect(doubtful.contradictions).toHaveLength(2);
  });

  it("is found out in a table of one's own where lugs joined to one are silent with each other", () => {
    const lugs = [..."abcde"].map((name) => ({ name }));
    const pair = (a: string, b: string, positions: number[]): BeepTold => ({ between: [a, b], positions });
    const beeps = [pair("a", "b", [1, 2]), pair("b", "c", [1]), pair("a", "c", [])];
    const { contradictions, next, isKnown } = answerOf({ lugs, positions: 2, beeps, errors: 0.01, moves: {} }, beeps);
    expect(isKnown).toBe(false);
    expect(contradictions.map(({ beep }) => beep)).toEqual([0, 1, 2]);
    expect(next!.again).toBe(true);
  });
});

describe("shorting", () => {
  const found = onBench(table("spdt"), ["A1", "A0", "A2"]);
  const beeps: BeepTold[] = [
    { between: ["1", "2"], positions: [1] },
    { between: ["2", "3"], positions: [2] },
  ];
  const shorting = (extra: BeepTold[]) => answerOf(questionOf(found), [...beeps, ...extra]).tables[0]!.shorting;

  it("is told by the two throws with the handle held between their positions, and by nothing else", () => {
    const { shortingTest } = answerOf(questionOf(found), beeps);
    expect(shortingTest).toMatchObject({ between: ["1", "3"], betweenPositions: [1, 2] });
    expect(shorting([])).toBe("not tried");
    expect(shorting([{ between: ["1", "3"], betweenPositions: [1, 2], beeps: true }])).toBe("yes");
    expect(shorting([{ between: ["3", "1"], betweenPositions: [2, 1], beeps: false }])).toBe("no");
    // The common and a throw that it still touches say nothing about the next throw.
    expect(shorting([{ between: ["1", "2"], betweenPositions: [1, 2], beeps: true }])).toBe("not tried");
  });
});
