import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dotAt, dotBeside, dotTowards } from "../../../src/page/map/nearest.ts";

const CROSS = [
  { x: 0, y: 0 },
  { x: 10, y: 1 },
  { x: -10, y: 0 },
  { x: 1, y: -10 },
  { x: 0, y: 10 },
];

describe("the arrow keys on the map", () => {
  it("go to the dot that lies that way", () => {
    const all = (["right", "left", "up", "down"] as const).map((direction) => dotTowards(CROSS, 0, direction));
    expect(all).toEqual([1, 2, 3, 4]);
    expect(dotTowards(CROSS, 1, "right")).toBeUndefined();
  });

  it("reach dots in the very same place one after the other, and lead on from there", () => {
    const dots = [
      { x: 0, y: 0 },
      { x: 5, y: 0 },
      { x: 0, y: 0 },
      { x: 0, y: 0 },
    ];
    expect(dotTowards(dots, 0, "right")).toBe(2);
    expect(dotTowards(dots, 2, "right")).toBe(3);
    expect(dotTowards(dots, 3, "right")).toBe(1);
    expect(dotTowards(dots, 3, "left")).toBe(2);
  });

  it("never go against the arrow, and page by page through every dot from left to right", () => {
    const layout = fc.array(fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 8 })), {
      minLength: 2,
      maxLength: 25,
    });
    fc.assert(
      fc.property(layout, (points) => {
        const dots = points.map(([x, y]) => ({ x, y }));
        for (const from of dots.keys()) {
          const right = dotTowards(dots, from, "right");
          if (right !== undefined) expect(dots[right]!.x).toBeGreaterThanOrEqual(dots[from]!.x);
          const up = dotTowards(dots, from, "up");
          if (up !== undefined) expect(dots[up]!.y).toBeLessThanOrEqual(dots[from]!.y);
        }
        let at: number | undefined = dots.reduce((best, { x, y }, dot) => {
          const least = dots[best]!;
          return x < least.x || (x === least.x && y < least.y) ? dot : best;
        }, 0);
        const passed: number[] = [];
        for (; at !== undefined; at = dotBeside(dots, at, 1)) {
          const before = passed.at(-1);
          if (before !== undefined) expect(dotBeside(dots, at, -1)).toBe(before);
          passed.push(at);
        }
        expect(passed).toHaveLength(dots.length);
      }),
    );
  });
});

describe("pointing at the map", () => {
  it("finds the nearest dot within reach, of several in one place the first", () => {
    expect(dotAt(CROSS, { x: 8, y: 1 }, 3)).toBe(1);
    expect(dotAt(CROSS, { x: 5, y: 5 }, 3)).toBeUndefined();
    expect(
      dotAt(
        [
          { x: 1, y: 1 },
          { x: 1, y: 1 },
        ],
        { x: 1, y: 2 },
        3,
      ),
    ).toBe(0);
  });
});
