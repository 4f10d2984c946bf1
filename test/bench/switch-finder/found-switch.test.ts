import { describe, expect, it } from "vitest";
import { lugSpots } from "../../../src/build-file/bodies/lug-spots.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { PartOf } from "../../../src/build-file/schema.ts";
import { switchTable } from "../../../src/build-file/switch-types.ts";
import { effort } from "../../effort.ts";
import { Random } from "../../random.ts";
import {
  answerOf,
  followed,
  lugsOf,
  NAMED_TABLES,
  onBench,
  questionOf,
  shuffled,
  wrongPairs,
} from "./switch-on-bench.ts";

const table = (name: string) => NAMED_TABLES.find(([each]) => each === name)![1];
const random = new Random(11);
const bench = (name: string) => onBench(table(name), shuffled(lugsOf(name, table(name)), random));

/** A part of the answer, read as a build file's. */
function read(part: unknown): PartOf<"switch"> {
  const guard = { presolder: 1, parts: { jack: { kind: "jack" }, it: part }, wires: [] };
  return readBuild(guard).parts.it as PartOf<"switch">;
}

describe("what is found", () => {
  it.each(NAMED_TABLES.map(([name]) => name))(
    "is named by the type's lugs, with poles, commons and throws: %s",
    (name) => {
      const found = bench(name);
      const question = questionOf(found);
      const { tables, done, isKnown, further, untouched, tried } = answerOf(question, followed(found, question));
      expect([done, isKnown, further.tables]).toEqual([true, true, 0]);
      const pairs = (found.names.length * (found.names.length - 1)) / 2;
      expect(untouched + tried).toBe(pairs);
      const [{ known, part, poles }] = tables as [(typeof tables)[number]];
      // The type's own table, in its own words, is the one that was listened to.
      const typed = switchTable(read(part));
      const back = new Map(Object.entries(known!.lugs).map(([own, lug]) => [lug, own]));
      const positions = typed.positions.map((groups) => groups.map((group) => group.map((lug) => back.get(lug)!)));
      expect(wrongPairs(found, known!.reversed ? [...positions].reverse() : positions)).toEqual([]);
      expect(known!.type).toBe(name.startsWith("rotary") ? "rotary" : name.split(" ")[0]);
      const commons = found.names.filter((own) => /0$/.test(found.roles.get(own)!));
      expect(poles.flatMap((pole) => pole.commons).sort()).toEqual([...commons].sort());
      const throws = found.names.filter((own) => /[1-9]$/.test(found.roles.get(own)!));
      expect(poles.flatMap((pole) => pole.throws).sort()).toEqual([...throws].sort());
    },
  );

  it("names other known switches with the same contacts, since no beeper tells them apart", () => {
    const found = bench("lever-5-four-pole");
    const question = questionOf(found);
    const [best] = answerOf(question, followed(found, question)).tables;
    expect(best!.others.map(({ title }) => title)).toEqual(["rotary switch, 4 poles, 5 positions"]);
    const three = bench("lever-3");
    const asked = questionOf(three);
    expect(answerOf(asked, followed(three, asked)).tables[0]!.others[0]!.type).toBe("rotary");
  });

  it("is the same where one position after the other is told", () => {
    const found = bench("lever-5");
    const question = questionOf(found);
    const beeps = followed(found, question).flatMap(({ between, positions }) =>
      [1, 2, 3, 4, 5].map((position) => ({ between, position, beeps: positions!.includes(position) })),
    );
    const { tables, done } = answerOf(question, beeps);
    expect(done).toBe(true);
    expect(wrongPairs(found, tables[0]!.positions)).toEqual([]);
  });

  it("is left open by a position that was not listened to", () => {
    const found = onBench(table("spdt"), ["A0", "A1", "A2"]);
    const question = questionOf(found);
    const { done, next } = answerOf(question, [
      { between: ["1", "2"], position: 2, beeps: false },
      { between: ["1", "3"], position: 1, beeps: false },
    ]);
    expect(done).toBe(false);
    expect(next).not.toBeNull();
  });
});

/** Rows of lugs as one body has them, as a person counts rows and columns. */
function spotsOf(part: object): Map<string, { x: number; y: number }> {
  const spots = [...lugSpots(part as PartOf<"switch">)];
  const rank = (values: number[], value: number) => [...new Set(values)].sort((a, b) => a - b).indexOf(value);
  const of = (value: number) => Math.round(value * 1e5);
  return new Map(
    spots.map(([lug, { x, y }]) => [
      lug,
      {
        x: rank(
          spots.map(([, spot]) => of(spot.x)),
          of(x),
        ),
        y: rank(
          spots.map(([, spot]) => -of(spot.y)),
          -of(y),
        ),
      },
    ]),
  );
}

describe("where it was told how the lugs sit", () => {
  const BODIES = [
    ["lever-5", "open-frame"],
    ["lever-5", "in-line-mirrored"],
    ["lever-3", "in-line-alike"],
    ["lever-5-four-pole", "board"],
    ["toggle-3", "open-frame"],
    ["dpdt", "mini-toggle"],
    ["dpdt", "slide"],
  ] as const;

  it.each(BODIES)(
    "a %s in the body %s takes fewer touches, is drawn in that body and has it in its part",
    (name, body) => {
      const lugs = lugsOf(name, table(name));
      const found = onBench(table(name), lugs);
      const spots = spotsOf({ kind: "switch", type: name, body });
      const told = { lugs: found.names.map((own) => ({ name: own, spot: spots.get(found.roles.get(own)!)! })) };
      const seen = followed(found, questionOf(found, told));
      const blind = Array.from({ length: effort(2, 20) }, () => {
        const other = bench(name);
        return followed(other, questionOf(other)).length;
      });
      expect(seen.length).toBeLessThanOrEqual(blind.reduce((sum, count) => sum + count, 0) / blind.length);
      const [best] = answerOf(questionOf(found, told), seen).tables;
      expect(best!.known).toMatchObject({ type: name, body, reversed: false });
      expect(best!.part).toMatchObject({ kind: "switch", type: name, body });
      expect(lugSpots(read(best!.part))).toEqual(lugSpots({ kind: "switch", type: name, body } as never));
    },
  );

  it("a known switch whose lugs sit otherwise has them drawn as found, none on another's place", () => {
    for (let trial = 0; trial < effort(10, 200); trial++) {
      const found = bench("toggle-3");
      const told = { lugs: found.names.map((own, index) => ({ name: own, spot: { x: index, y: 0 } })) };
      const question = questionOf(found, told);
      const [best] = answerOf(question, followed(found, question)).tables;
      expect(wrongPairs(found, best!.positions)).toEqual([]);
      const part = read(best!.part);
      const drawn = [...lugSpots(part)].sort(([, a], [, b]) => a.x - b.x).map(([lug]) => lug);
      expect(drawn.map((lug) => lug)).toEqual(found.names.map((own) => best!.known!.lugs[own]));
    }
  });

  it("a switch whose positions are counted from the other end is told so, its lugs on their known places", () => {
    const found = onBench([...table("lever-5")].reverse(), lugsOf("lever-5", table("lever-5")));
    const spots = spotsOf({ kind: "switch", type: "lever-5", body: "open-frame" });
    const told = { lugs: found.names.map((own) => ({ name: own, spot: spots.get(found.roles.get(own)!)! })) };
    const [best] = answerOf(questionOf(found, told), followed(found, questionOf(found, told))).tables;
    expect(wrongPairs(found, best!.positions)).toEqual([]);
    expect(best!.known).toMatchObject({ type: "lever-5", body: "open-frame", reversed: true });
    expect(best!.known!.lugs).toEqual(Object.fromEntries(found.roles));
  });
});
