import { describe, expect, test } from "vitest";
import { heightsOf } from "../../../src/bench/heights/heights.ts";
import type { HeightsTold } from "../../../src/bench/heights/heights-told.ts";
import { mountedPickup } from "../../../src/bench/heights/mounted-pickup.ts";
import type { HeightsQuestion } from "../../../src/bench/heights/question.ts";
import { gapOf } from "../../../src/bench/heights/screws.ts";
import { effort } from "../../effort.ts";
import {
  BALANCED,
  type Evening,
  type Falling,
  type Guitar,
  LAWS,
  lowered,
  millimetres,
  NAMES,
  NOW,
  PITCH_METRES,
  questionOf,
  settingsAt,
} from "./simulated.ts";

const guitarOf = (law: Falling): Guitar => ({ laws: [law, law, law], balanced: BALANCED });
const TWO_HEIGHTS = [NOW, lowered(NOW, 1.5)];
const THREE_HEIGHTS = [NOW, lowered(NOW, 1.3), lowered(NOW, 1.7)];

function evening(law: Falling, changes: Partial<Evening> = {}): Evening {
  const usual = { now: NOW, heights: TWO_HEIGHTS, levers: [1, 3, 5], noiseDb: 0.3, seed: 1 };
  return { guitar: guitarOf(law), ...usual, ...changes };
}

/** Turns told less turns wanted, of every screw. */
function turnsOff(told: HeightsTold, now = NOW): number[] {
  return told.pickups.flatMap(({ name, screws }) => {
    const index = NAMES.indexOf(name as (typeof NAMES)[number]);
    return screws.map(
      ({ side, turns }) => turns! - (gapOf(BALANCED[index]!, side) - gapOf(now[index]!, side)) / PITCH_METRES,
    );
  });
}

/** A quarter of a turn, and rounding of the numbers. */
const QUARTER = 0.25 + 1e-9;

describe("turns from recordings at several heights", () => {
  const cases = Object.entries(LAWS).flatMap(([name, law]) => [
    { name, heights: 2, law, sets: TWO_HEIGHTS },
    { name, heights: 3, law, sets: THREE_HEIGHTS },
  ]);
  test.each(cases)(
    "$name: within a quarter turn from $heights heights and levels that scatter by 0.3 dB",
    ({ law, sets }) => {
      const off: number[] = [];
      for (let seed = 1; seed <= effort(1, 8); seed++)
        off.push(...turnsOff(heightsOf(questionOf(evening(law, { heights: sets, seed: seed * 7919 + 1 })))));
      expect(Math.max(...off.map(Math.abs))).toBeLessThanOrEqual(QUARTER);
    },
  );

  test("without scatter the turns are exact to the eighth that they are rounded to", () => {
    for (const law of [LAWS["power 1"]!, LAWS["power 1.7"]!, LAWS["power 3"]!]) {
      const off = turnsOff(heightsOf(questionOf(evening(law, { noiseDb: 0 }))));
      expect(Math.max(...off.map(Math.abs))).toBeLessThanOrEqual(0.125 + 1e-9);
    }
  });

  test("the ranges told hold what they should: the right turns lie within them, 95 in 100", () => {
    let [inside, all] = [0, 0];
    for (let seed = 1; seed <= effort(6, 24); seed++) {
      const told = heightsOf(questionOf(evening(LAWS["power 1.7"]!, { seed: seed * 31 })));
      const off = turnsOff(told);
      const ranges = told.pickups.flatMap(({ screws }) => screws.map(({ turnsError }) => turnsError!));
      // Rounding to an eighth adds up to half of one.
      inside += off.filter((turns, index) => Math.abs(turns) <= ranges[index]! + 1 / 16).length;
      all += off.length;
    }
    expect(inside / all).toBeGreaterThan(0.93);
  });

  test("levels told for afterwards are those that the guitar then has, to the error told", () => {
    const told = heightsOf(questionOf(evening(LAWS["power 2 counted from 2 mm below"]!, { heights: THREE_HEIGHTS })));
    expect(told.balanced).toEqual({ positions: true, strings: true });
    for (const { off, offAfter, errorAfter } of told.positions) {
      expect(Math.abs(offAfter!)).toBeLessThan(0.5);
      expect(Math.abs(offAfter!)).toBeLessThanOrEqual(Math.max(0.2, Math.abs(off)));
      expect(errorAfter!).toBeLessThan(0.6);
    }
  });

  test("a pickup that never sounds alone is told from the positions that it shares", () => {
    const law = LAWS["power 1.7"]!;
    // Positions 2 and 4 hold the middle pickup, each beside one that sounds alone elsewhere.
    const told = heightsOf(
      questionOf(evening(law, { levers: [1, 2, 4, 5], heights: THREE_HEIGHTS, noiseDb: 0.1 }), { withStrings: false }),
    );
    const middle = told.pickups.find(({ name }) => name === "middle")!;
    expect(Math.abs(middle.law.exponent - 1.7)).toBeLessThan(middle.law.exponentError + 0.05);
    expect(told.balanced!.positions).toBe(true);
  });

  test("where strings do not matter, both screws of a pickup go the same way", () => {
    const told = heightsOf(questionOf(evening(LAWS["power 1.7"]!, { noiseDb: 0 }), { withStrings: false }));
    const [bass, treble] = told.pickups[0]!.screws;
    expect(Math.abs(bass!.turns! - treble!.turns!)).toBeLessThanOrEqual(0.25);
  });

  test("without a reference all meet where the screws move least", () => {
    const now = [millimetres(2.4, 2), millimetres(2.4, 2), millimetres(2.4, 2)];
    const law: Falling = (gap) => gap ** -1.7;
    const guitar = {
      laws: [law, law, law],
      balanced: [millimetres(3, 2.5), millimetres(2.4, 2), millimetres(1.92, 1.6)],
    };
    const told = heightsOf(
      questionOf(
        { guitar, now, heights: [now, lowered(now, 1.5)], levers: [1, 3, 5], noiseDb: 0, seed: 1 },
        { reference: null },
      ),
    );
    // The geometric middle of the three is the middle pickup's own height.
    const turns = told.pickups.map(({ screws }) => screws[0]!.turns!);
    expect(turns[0]).toBeGreaterThan(0.5);
    expect(Math.abs(turns[1]!)).toBeLessThanOrEqual(0.125);
    expect(turns[2]).toBeLessThan(-0.4);
  });
});

const withLimits = (
  question: HeightsQuestion,
  name: string,
  minMetres: number,
  maxMetres: number,
): HeightsQuestion => ({
  ...question,
  pickups: question.pickups.map((pickup) =>
    pickup.name === name ? { ...pickup, limits: { minMetres, maxMetres } } : pickup,
  ),
});

describe("limits", () => {
  test("a limit is kept exactly, named, and what is left is told", () => {
    const question = withLimits(questionOf(evening(LAWS["power 1.7"]!, { noiseDb: 0 })), "neck", 1e-3, 2.65e-3);
    const told = heightsOf(question);
    const [neck] = told.pickups;
    for (const { gapAfter } of neck!.screws) expect(gapAfter).toBeLessThanOrEqual(2.65e-3 + 1e-9);
    expect(neck!.screws.map(({ stoppedBy }) => stoppedBy)).toContain("max");
    expect(told.balanced!.positions).toBe(false);
    expect(told.left.join(" ")).toMatch(
      /position 5 stays \d\.\d dB too loud: the bass side of neck stands at its greatest gap/,
    );
  });

  test("a string that two screws cannot reach is named, with what can", () => {
    const guitar = { ...guitarOf(LAWS["power 1.7"]!), stringsDb: [0, 3, 0, 0, 0, 0] };
    const told = heightsOf(questionOf(evening(LAWS["power 1.7"]!, { guitar, noiseDb: 0 })));
    expect(told.balanced).toEqual({ positions: true, strings: false });
    expect(told.left[0]).toMatch(/string 2 \d\.\d dB too loud.*pole screws/);
  });

  test("a pickup near the strings is warned of, by the person's own limit", () => {
    const question = questionOf(evening(LAWS["power 1.7"]!, { noiseDb: 0 }));
    const near = (pullMetres: number) =>
      heightsOf({ ...question, pickups: question.pickups.map((pickup) => ({ ...pickup, pullMetres })) }).warnings.join(
        " ",
      );
    expect(near(2.5e-3)).toMatch(/bridge, bass side: at 2\.\d+ mm it is nearer than 2\.5 mm.*warble/);
    expect(near(1e-3)).not.toMatch(/warble/);
  });
});

describe("words", () => {
  test("without the screws' pitch the answer is in millimetres and says how to measure it", () => {
    const question = questionOf(evening(LAWS["power 1.7"]!, { noiseDb: 0 }));
    const pickups = question.pickups.map((pickup) => ({
      ...pickup,
      pitchMetres: { bass: undefined, treble: undefined },
    }));
    const [neck] = heightsOf({ ...question, pickups }).pickups;
    const [bass, treble] = neck!.screws;
    expect(bass!.turns).toBeNull();
    expect(bass!.gapAfter * 1000).toBeCloseTo(3.2, 1);
    expect(treble!.gapAfter * 1000).toBeCloseTo(2.6, 1);
    expect(bass!.text).toMatch(/^Bass screw: 0\.\d+ mm down, counter-clockwise\. Count ten turns/);
  });

  test("a screw that works the other way round is turned the other way, and a wider spread asks more of a tilt", () => {
    const question = questionOf(evening(LAWS["power 1.7"]!, { noiseDb: 0 }));
    const [neck] = question.pickups;
    const told = heightsOf({
      ...question,
      pickups: [{ ...neck!, clockwiseLowers: true, lever: 1.5 }, ...question.pickups.slice(1)],
    });
    const [bass, treble] = told.pickups[0]!.screws;
    expect(bass!.text).toMatch(/down, clockwise\.$/);
    // 0.6 mm and 0.2 mm under the outer strings: 0.4 mm down, and a tilt of 0.2 mm half as much again.
    expect(bass!.turns! * PITCH_METRES).toBeCloseTo(0.7e-3, 4);
    expect(Math.abs(treble!.turns! * PITCH_METRES - 0.1e-3)).toBeLessThan(0.11e-3);
  });

  test("what was taken as usual is said, and what was measured is not", () => {
    const gaps = millimetres(2.4, 2);
    const bare = mountedPickup("neck", { gaps, pitchMetres: { bass: 8e-4, treble: 8e-4 } });
    expect(bare.assumed.join(" ")).toMatch(/1\.5 mm.*6 mm.*76 mm.*clockwise raises.*no source/);
    const full = {
      minMetres: 1e-3,
      maxMetres: 5e-3,
      screwsApartMetres: 0.08,
      stringsApartMetres: 0.05,
      clockwiseLowers: true,
    };
    expect(mountedPickup("neck", { gaps, pitchMetres: { bass: 8e-4, treble: 8e-4 }, ...full }).assumed).toEqual([]);
  });
});

describe("what recordings cannot tell", () => {
  test("no recordings: the model's levels, what is off, and what to record; no turns", () => {
    const told = heightsOf({ ...questionOf(evening(LAWS["power 1"]!)), rows: [], reference: settingsAt(1) });
    expect(told).toMatchObject({ basis: "model", pickups: [], balanced: null });
    expect(told.positions.map(({ label }) => label)).toEqual([1, 2, 3, 4, 5].map((lever) => `position ${lever}`));
    expect(told.next.join(" ")).toMatch(/two heights/);
  });

  test("one height: how far off, and no turns", () => {
    const told = heightsOf(questionOf(evening(LAWS["power 1.7"]!, { heights: [NOW], noiseDb: 0 })));
    expect(told).toMatchObject({ basis: "one height", pickups: [], balanced: null });
    expect(told.positions.map(({ off }) => off > 0.5)).toEqual([false, true, true]);
  });

  test("heights too near each other are refused, naming the pickup and how far to turn", () => {
    const heights = [NOW, lowered(NOW, 1.03)];
    const told = () => heightsOf(questionOf(evening(LAWS["power 1"]!, { heights })));
    expect(told).toThrow(
      /pickups\.neck: was recorded at gaps from 2\.5 mm to 2\.58 mm, too near each other.*until the gap is \d/,
    );
  });

  test("a pickup that stood still between the heights is named", () => {
    const heights = [NOW, [NOW[0]!, ...lowered(NOW.slice(1), 1.5)]];
    const told = () => heightsOf(questionOf(evening(LAWS["power 1"]!, { heights })));
    expect(told).toThrow(/^pickups\.neck: stands at one height in all recordings; expected two/);
  });

  test("levels that rise as the gap grows are refused as exchanged", () => {
    const question = questionOf(evening(LAWS["power 1.7"]!));
    const rows = question.rows.map((row) => ({ ...row, gaps: row.gaps === NOW ? TWO_HEIGHTS[1]! : NOW }));
    expect(() => heightsOf({ ...question, rows })).toThrow(/levels rise as the gap grows/);
  });

  test("a fall that no pickup has is refused as a mistyped gap, however steep", () => {
    const question = questionOf(evening(LAWS["power 1.7"]!));
    const rows = question.rows.map((row) => ({
      ...row,
      levelsDb: row.levelsDb.map((level) => (row.gaps === NOW ? level : level - 190)),
    }));
    expect(() => heightsOf({ ...question, rows })).toThrow(
      /pickups\.neck: its levels fall as the gap to the power of \d+, which no/,
    );
  });

  test("a pickup that sounds in no recorded position gets no turns, and the others do", () => {
    const told = heightsOf(questionOf(evening(LAWS["power 1.7"]!, { levers: [1, 5] })));
    expect(told.pickups.map(({ name }) => name)).toEqual(["neck", "bridge"]);
    expect(told.next.join(" ")).toMatch(/middle sounds in none of the positions recorded/);
  });

  test("a reference that was not recorded is refused, naming those that were", () => {
    const told = () => heightsOf(questionOf(evening(LAWS["power 1"]!), { reference: settingsAt(2) }));
    expect(told).toThrow(
      /^target\.reference: was not among the positions; expected one of: position 1; position 3; position 5/,
    );
  });
});
