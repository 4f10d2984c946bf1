import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { orient } from "../../../src/choice/map/orientation.ts";

const layout = fc.array(fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -9, max: 9 })), {
  minLength: 4,
  maxLength: 20,
});

function turned(places: Float64Array, angle: number, mirrored: boolean): Float64Array {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return places.map((_, k) => {
    const [x, y] = [places[k - (k % 2)]!, (mirrored ? -1 : 1) * places[k - (k % 2) + 1]!];
    return k % 2 === 0 ? cos * x - sin * y + 3 : sin * x + cos * y - 7;
  });
}

describe("a map's orientation", () => {
  it("is the same however scaling left it turned and mirrored", () => {
    fc.assert(
      fc.property(layout, fc.double({ min: 0, max: 6.3, noNaN: true }), fc.boolean(), (points, angle, mirrored) => {
        const places = Float64Array.from(points.flat());
        const [bright, full] = [0, 1].map((k) => Float64Array.from(points, (point) => point[k]!));
        const first = orient(places, bright!, full!);
        // Where neither side is longer or nothing goes with an axis, rounding decides.
        const spread = (k: number) => Math.max(...first.places.filter((_, i) => i % 2 === k));
        fc.pre(spread(0) > 2 * spread(1) && spread(1) > 0.1 && first.brightness > 0.1 && first.fullness > 0.1);
        const again = orient(turned(places, angle, mirrored), bright!, full!);
        for (const [k, value] of first.places.entries()) expect(again.places[k]).toBeCloseTo(value, 6);
      }),
    );
  });

  it("puts the brighter to the right and the fuller up, and says how well that holds", () => {
    const places = Float64Array.of(10, 0, 0, 1, -10, 0, 0, -1);
    const {
      places: found,
      brightness,
      fullness,
    } = orient(places, Float64Array.of(1, 2, 3, 2), Float64Array.of(5, 4, 5, 6));
    const expected = [-10, 0, 0, -1, 10, 0, 0, 1];
    for (const [k, value] of expected.entries()) expect(found[k]).toBeCloseTo(value, 12);
    expect([brightness, fullness]).toEqual([1, 1]);
  });

  it("says nothing of brightness where all are as bright", () => {
    expect(
      orient(Float64Array.of(0, 0, 1, 0, 2, 1), Float64Array.of(1, 1, 1), Float64Array.of(1, 1, 1)).brightness,
    ).toBe(0);
  });
});
