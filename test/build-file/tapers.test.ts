import { describe, expect, test } from "vitest";
import { wiperFraction, wiperShare } from "../../src/build-file/taper.ts";
import { readTaperTable } from "../../src/build-file/tapers/read-table.ts";

/**
 * Three audio and three linear pots of 100 kΩ, percent of the track at dials 1 to 9, their means. B. Holmes, M. van Walstijn, Potentiometer
 * law modelling and identification, DAFx-19, Birmingham 2019: companion data, repository bholmesqub/DAFx19.
 */
const MEASURED_AUDIO = [0.7, 2.2, 6.8, 11.4, 16.0, 20.9, 44.7, 73.4, 98.8];
const MEASURED_LINEAR = [7.2, 19.4, 30.4, 41.3, 51.9, 62.5, 73.2, 84.2, 96.6];
/** A maker's tapers at shares of the turn, as the same authors give them. */
const TURNS = [0.05, 0.3, 0.51, 0.7, 0.92, 0.97];
const SPECIFIED: Readonly<Record<string, readonly number[]>> = {
  "0.055": [0.003, 0.015, 0.057, 0.284, 0.954, 0.999],
  "0.157": [0.003, 0.063, 0.162, 0.41, 0.958, 1],
  "0.301": [0.004, 0.151, 0.311, 0.542, 0.965, 1],
};

const at = (spec: object, dial: number) =>
  wiperFraction({ taper: "audio", midpoint: undefined, ...spec } as never, dial);
const decibels = (share: number) => 20 * Math.log10(share);

describe("a usual audio track", () => {
  test.each(Object.entries(SPECIFIED))(
    "with %s at half turn goes as one is specified, within 1 %% of the track",
    (half, shares) => {
      for (const [index, turn] of TURNS.entries())
        expect(Math.abs(at({ midpoint: Number(half) }, 10 * turn) - shares[index]!), `${turn}`).toBeLessThan(0.012);
    },
  );

  test("is within 2.5 dB of three measured ones from dial 2 up, where two straight lines were 12 dB off at dial 1", () => {
    for (const [index, percent] of MEASURED_AUDIO.entries()) {
      const dial = index + 1;
      const off = Math.abs(decibels(at({}, dial)) - decibels(percent / 100));
      expect(off, `dial ${dial}`).toBeLessThan(dial === 1 ? 5 : 2.5);
    }
  });

  test("has its knee near 60 % of the turn", () => {
    const slope = (dial: number) => at({}, dial + 0.25) - at({}, dial - 0.25);
    expect(slope(8) / slope(4)).toBeGreaterThan(4);
    const bend = Array.from({ length: 61 }, (_, i) => 3.5 + i / 20).map(
      (dial) => [slope(dial + 0.3) - slope(dial - 0.3), dial] as const,
    );
    const [, knee] = bend.toSorted(([a], [b]) => b - a)[0]!;
    expect(knee).toBeGreaterThan(5.2);
    expect(knee).toBeLessThan(6.8);
  });

  test("goes through its share at half turn, whatever it is, and never turns back", () => {
    for (const midpoint of [0.001, 0.02, 0.057, 0.1, 0.15, 0.22, 0.31, 0.45, 0.5, 0.62, 0.9, 0.999]) {
      expect(at({ midpoint }, 5)).toBeCloseTo(midpoint, 12);
      const shares = Array.from({ length: 201 }, (_, i) => at({ midpoint }, i / 20));
      expect([shares[0], shares[200]]).toEqual([0, 1]);
      for (let i = 1; i <= 200; i++)
        expect(shares[i], `${midpoint} at ${i / 20}`).toBeGreaterThanOrEqual(shares[i - 1]!);
      for (let i = 1; i < 200; i++) expect(Math.abs(shares[i + 1]! - shares[i]!)).toBeLessThan(0.6);
    }
  });
});

describe("a usual linear track", () => {
  test("is within 4 % of the track of three measured ones", () => {
    for (const [index, percent] of MEASURED_LINEAR.entries())
      expect(Math.abs(at({ taper: "linear" }, index + 1) - percent / 100)).toBeLessThan(0.04);
  });
});

describe("what is left at the ends", () => {
  const pot = (more: object) =>
    ({
      taper: "linear",
      midpoint: undefined,
      resistance: 250_000,
      measured: undefined,
      endResistance: 1,
      ...more,
    }) as never;

  test("keeps the wiper off both lugs by its ohms, of the measured track too", () => {
    expect(wiperShare(pot({}), 0) * 250_000).toBeCloseTo(1, 9);
    expect((1 - wiperShare(pot({ measured: 200_000, endResistance: 400 }), 10)) * 200_000).toBeCloseTo(400, 6);
  });

  test("never crosses the middle, however much it is said to be", () => {
    expect(wiperShare(pot({ resistance: 100, endResistance: 1e6 }), 0)).toBe(0.5);
  });

  test("changes nothing in between", () => {
    expect(wiperShare(pot({}), 4)).toBe(wiperFraction(pot({}), 4));
  });
});

describe("a table of a track as it was measured", () => {
  test("counts turns and readings by their last line", () => {
    expect(readTaperTable("0\t1.2\n150; 16500\n300, 98200\n")).toEqual([
      [0, 0],
      [0.5, 16500 / 98200],
      [1, 1],
    ]);
  });

  test.each(["0 0\n5 38k\n10 251k", "0, 0\n5, 38 kΩ\n10, 251 kΩ", "0;0\n150°;38000\n300°;251000", "0,0\n5,38\n10,251"])(
    "takes readings as a meter shows them, and any sign between: %j",
    (text) => {
      expect(readTaperTable(text)).toEqual([
        [0, 0],
        [0.5, 38 / 251],
        [1, 1],
      ]);
    },
  );

  test("takes percent with their sign", () => {
    expect(readTaperTable("0 0%\n50% 16 %\n100% 100%")).toEqual([
      [0, 0],
      [0.5, 0.16],
      [1, 1],
    ]);
  });

  test.each([
    ["0\t0\n2,5\t0,05\n10\t1", /line 2 is "2,5\t0,05".*with a decimal point/],
    ["0 0\n5\n10 9", /line 2 is "5"/],
    ["0, 0", /at least two lines/],
    ["0, 0\nfive, 3\n10, 9", /line 2 is "five, 3"/],
    ["1, 0\n10, 9", /first line is at 1/],
    ["0, 5\n10, 9", /next to nothing/],
    ["0, 0\n6, 5\n5, 7\n10, 9", /line 3 does not go on/],
    ["0, 0\n6, 5\n7, 4\n10, 9", /line 3 does not go on/],
  ])("refuses %j by what is wrong", (text, message) => {
    expect(() => readTaperTable(text)).toThrow(message);
  });
});

describe("a pot's angles by its data sheet", () => {
  const angles = { mechanical: 300, electrical: 225 };

  test("make what is beyond the electrical angle flat, 37.5° of 300° at either end, and leave half turn alone", () => {
    for (const taper of ["linear", "audio", "reverse-audio"]) {
      const share = (degrees: number) => at({ taper, angles }, degrees / 30);
      expect([share(0), share(300)]).toEqual([0, 1]);
      expect(share(37.5), taper).toBeLessThan(0.06);
      expect(1 - share(262.5), taper).toBeLessThan(0.06);
      expect(share(150)).toBeCloseTo(at({ taper }, 5), 12);
      const all = Array.from({ length: 301 }, (_, degrees) => share(degrees));
      for (let i = 1; i <= 300; i++) expect(all[i]).toBeGreaterThanOrEqual(all[i - 1]!);
    }
    // Between them a linear track of 225° changes by 1/225 a degree, about.
    const slope = (at({ taper: "linear", angles }, 6) - at({ taper: "linear", angles }, 4)) / 60;
    expect(slope * 225).toBeGreaterThan(0.95);
    expect(slope * 225).toBeLessThan(1.15);
  });

  test("of 270° in 300° are the usual shapes, and no flat end at all still ends at nothing and the whole", () => {
    for (const dial of [0, 0.3, 1, 4, 5, 7, 9.8, 10])
      expect(at({ angles: { mechanical: 300, electrical: 270 } }, dial)).toBeCloseTo(at({}, dial), 12);
    const none = { mechanical: 300, electrical: 300 };
    expect([at({ angles: none }, 0), at({ angles: none }, 10)]).toEqual([0, 1]);
    expect(at({ taper: "linear", angles: none }, 1)).toBeGreaterThan(at({ taper: "linear" }, 1));
  });
});
