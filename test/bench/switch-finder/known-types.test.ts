import { describe, expect, it } from "vitest";
import { casesOf, effort } from "../../effort.ts";
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
  type TradeTable,
  wrongPairs,
} from "./switch-on-bench.ts";

const LETTERS = 8;
const MOST_THROWS = 12;

const ROTARIES = Array.from({ length: LETTERS }, (_, pole) =>
  Array.from({ length: MOST_THROWS - 1 }, (_, way) => ({ poles: pole + 1, throws: way + 2 })),
).flat();

/** Rotaries up to two dozen lugs are gone through a dozen times each; a few of the largest, of up to 104, once. */
const CUSTOMARY = ROTARIES.filter(({ poles, throws }) => poles * (throws + 1) <= 24);
const LARGE = ROTARIES.filter(({ poles, throws }) => poles * (throws + 1) > 24);

const log2OfFactorial = (n: number) =>
  Array.from({ length: n }, (_, index) => Math.log2(index + 1)).reduce((a, b) => a + b, 0);

/**
 * Bits of the choice between all different contact tables of known switches with as many lugs and positions, counted by hand: all
 * orders of the lugs, over those that only exchange poles alike; at four lugs and three positions a toggle and a rotary.
 */
const BITS: Readonly<Record<string, number>> = {
  "lever-3": Math.log2(40_320 / 2),
  "lever-5": Math.log2(40_320 / 2),
  "lever-5-four-pole": log2OfFactorial(24) - log2OfFactorial(4),
  "toggle-3": Math.log2(24 + 24),
  spdt: Math.log2(6),
  dpdt: Math.log2(720 / 2),
  "dpdt-on-on-on A1-B2": Math.log2(720),
  "dpdt-on-on-on A2-B1": Math.log2(720),
  "rotary 2×4": log2OfFactorial(10) - 1,
};

/**
 * With many poles of two throws few pairs beep at all, and silence tells little: there the finder needs more than 1.5 tests a bit,
 * as two other ways to choose did that were tried, one of them looking two touches ahead.
 */
const mostTestsOfABit = (poles: number, throws: number) => (poles >= 7 && throws === 2 ? 2 : 1.5);

/** @returns how many touches each took */
function touchesOf(name: string, table: TradeTable, trials: number, seed: number): number[] {
  const random = new Random(seed);
  return Array.from({ length: trials }, (_, trial) => {
    // The handle is as often found the other way round.
    const found = trial % 2 === 0 ? table : [...table].reverse();
    const bench = onBench(found, shuffled(lugsOf(name, table), random));
    const question = questionOf(bench);
    const beeps = followed(bench, question);
    const [best] = answerOf(question, beeps).tables;
    expect(wrongPairs(bench, best!.positions)).toEqual([]);
    return beeps.length;
  });
}

const mean = (counts: readonly number[]) => counts.reduce((sum, count) => sum + count, 0) / counts.length;

describe("a switch of a known type, its lugs in any order, either way round", () => {
  it.each(NAMED_TABLES)("is found without fault within 1.5 tests a bit: %s", (name, table) => {
    const counts = touchesOf(name, table, effort(name.startsWith("lever") ? 3 : 12, 40), 1);
    expect(mean(counts)).toBeLessThanOrEqual(1.5 * BITS[name]!);
  });

  it.each(casesOf(CUSTOMARY, 4))(
    "is found without fault: rotary, $poles poles, $throws throws",
    ({ poles, throws }) => {
      const counts = touchesOf("rotary", rotaryTable(poles, throws), effort(1, 12), poles * 100 + throws);
      const bits =
        log2OfFactorial(poles * (throws + 1)) - log2OfFactorial(poles) + (poles === 1 && throws === 3 ? 1 : 0);
      expect(mean(counts)).toBeLessThanOrEqual(effort(2.2, mostTestsOfABit(poles, throws)) * bits);
    },
  );

  it.each(LARGE.slice(0, effort(1, 4)))(
    "is found without fault: large rotary, $poles poles, $throws throws",
    ({ poles, throws }) => {
      touchesOf("rotary", rotaryTable(poles, throws), 1, poles * 100 + throws);
    },
  );
});
