import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { PartOf } from "../../../src/build-file/schema.ts";
import { switchTable } from "../../../src/build-file/switch-types.ts";
import { effort } from "../../effort.ts";
import { Random } from "../../random.ts";
import { answerOf, followed, onBench, questionOf, shuffled, type TradeTable, wrongPairs } from "./switch-on-bench.ts";

const ON_OFF_ON: TradeTable = ["A0-A1 B0-B1", "", "A0-A2 B0-B2"];
const ALL_TOGETHER: TradeTable = ["a-b-c-d-e", "a-b-c-d"];

function read(part: unknown): PartOf<"switch"> {
  const guard = { presolder: 1, parts: { jack: { kind: "jack" }, it: part }, wires: [] };
  return readBuild(guard).parts.it as PartOf<"switch">;
}

/** Any groups in any position. */
function anyTable(lugs: readonly string[], positions: number, random: Random): TradeTable {
  return Array.from({ length: positions }, () => {
    const groups: string[][] = [];
    for (const lug of lugs) {
      const at = random.below(lugs.length);
      groups[at] = [...(groups[at] ?? []), lug];
    }
    return groups
      .filter((group) => group.length > 1)
      .map((group) => group.join("-"))
      .join(" ");
  });
}

describe("a switch of no known type", () => {
  it("off in the middle is found with its commons, and its table goes into a build file", () => {
    const found = onBench(ON_OFF_ON, ["B1", "A0", "A2", "B0", "A1", "B2"]);
    const question = questionOf(found);
    const { tables, isKnown, done, text } = answerOf(question, followed(found, question));
    expect([isKnown, done]).toEqual([false, true]);
    expect(text).toMatch(/^No known switch beeps so/);
    const [best] = tables;
    expect(best!.known).toBeNull();
    expect(wrongPairs(found, best!.positions)).toEqual([]);
    expect(best!.poles).toEqual([
      { commons: ["4"], throws: ["1", "6"] },
      { commons: ["2"], throws: ["3", "5"] },
    ]);
    const part = read(best!.part);
    expect(switchTable(part).positions.map((groups) => groups.filter((group) => group.length > 1))).toEqual(
      best!.positions,
    );
    expect(switchTable(part).lugs.toSorted()).toEqual(["1", "2", "3", "4", "5", "6"]);
  });

  it("is found without fault whatever it joins, by no more touches than it has pairs and one more where it looked like a known one", () => {
    const random = new Random(3);
    for (let trial = 0; trial < effort(25, 400); trial++) {
      const lugs = [..."abcdefghij"].slice(0, 2 + random.below(9));
      const table = anyTable(lugs, 1 + random.below(5), random);
      const found = onBench(table, shuffled(lugs, random));
      const question = questionOf(found);
      const beeps = followed(found, question);
      const pairs = (lugs.length * (lugs.length - 1)) / 2;
      const again = beeps.length - new Set(beeps.map(({ between }) => [...between].sort().join())).size;
      expect(beeps.length - again).toBeLessThanOrEqual(pairs);
      const answer = answerOf(question, beeps);
      // What every touch agrees with and all pairs were not listened to may still be a known switch.
      if (answer.untouched === 0 || !answer.isKnown) expect(wrongPairs(found, answer.tables[0]!.positions)).toEqual([]);
    }
  });

  it("spares the pairs that others tell: what beeps with one lug beeps with all that this one beeps with", () => {
    const found = onBench(ALL_TOGETHER, [..."abcde"]);
    const question = questionOf(found);
    const beeps = followed(found, question);
    expect(beeps.length).toBe(4);
    expect(wrongPairs(found, answerOf(question, beeps).tables[0]!.positions)).toEqual([]);
  });

  it("has its lugs named L1, L2, … in the build file where their own names are too free for one", () => {
    const names = ["left, red", "middle", "right"];
    const beeps = [
      { between: ["left, red", "middle"] as const, positions: [1] },
      { between: ["middle", "right"] as const, positions: [1] },
      { between: ["left, red", "right"] as const, positions: [1] },
    ];
    const { tables } = answerOf(
      { lugs: names.map((name) => ({ name })), positions: 1, beeps, errors: 0.01, moves: {} },
      beeps,
    );
    expect(tables[0]!.part).toEqual({ kind: "switch", positions: [[["L1", "L2", "L3"]]] });
    expect(tables[0]!.positions).toEqual([[names]]);
  });
});
