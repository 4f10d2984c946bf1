import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fannedOut } from "../../../src/page/map/fan.ts";

const apart = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y);

describe("dots that would hide each other", () => {
  it("stand apart, about the place that they have", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), (count) => {
        const fanned = fannedOut(Array.from({ length: count }, () => ({ x: 100, y: 50 })));
        for (const [i, a] of fanned.entries())
          for (const b of fanned.slice(i + 1)) expect(apart(a, b)).toBeGreaterThan(12);
        const middle = (axis: "x" | "y") => fanned.reduce((sum, dot) => sum + dot[axis], 0) / count;
        expect(middle("x")).toBeCloseTo(100, 6);
        expect(middle("y")).toBeCloseTo(50, 6);
      }),
    );
  });

  it("are no others than those: whatever stands alone stays where it is", () => {
    const dots = [
      { x: 0, y: 0 },
      { x: 40, y: 0 },
      { x: 41, y: 1 },
    ];
    const fanned = fannedOut(dots);
    expect(fanned[0]).toEqual(dots[0]);
    expect(apart(fanned[1]!, fanned[2]!)).toBeGreaterThan(12);
  });
});
