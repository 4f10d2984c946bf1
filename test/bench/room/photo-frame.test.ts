import fc from "fast-check";
import { expect, test } from "vitest";
import { inGuardFrame, type Marks, type Pixel, traceTolerance } from "../../../src/bench/room/photo-frame.ts";

/** A photograph at 2 pixels a millimetre, its neck up: the centre line runs upwards from 300, 900. */
const MARKS: Marks = { first: { x: 300, y: 900 }, second: { x: 300, y: 500 }, apart: 0.2, fromBridge: 0.01 };

test("a photograph that lies on its side is turned and scaled by its two marks", () => {
  const [x, y] = inGuardFrame(MARKS, { x: 340, y: 700 });
  // 200 pixels on towards the neck are 100 mm; with the neck up, the treble side is to the right: 40 pixels are 20 mm.
  expect(x).toBeCloseTo(0.11, 9);
  expect(y).toBeCloseTo(0.02, 9);
});

test("no line is farther off than its tolerance says, however its marks and points are off", () => {
  const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
  const place = fc.record({ x: fc.integer({ min: 0, max: 1000 }), y: fc.integer({ min: 0, max: 1000 }) });
  const moved = ({ x, y }: Pixel, pixels: number, turn: number) => ({
    x: x + pixels * Math.cos(turn),
    y: y + pixels * Math.sin(turn),
  });
  const errors = { pixels: 3, apart: 0.0005 };
  fc.assert(
    fc.property(place, angle, angle, angle, fc.constantFrom(-1, 1), (point, one, two, own, sign) => {
      const off: Marks = {
        ...MARKS,
        first: moved(MARKS.first, errors.pixels, one),
        second: moved(MARKS.second, errors.pixels, two),
        apart: MARKS.apart + sign * errors.apart,
      };
      const clicked = moved(point, errors.pixels, own);
      const [x, y] = inGuardFrame(off, clicked);
      const [trueX, trueY] = inGuardFrame(MARKS, point);
      // What is told is made of what was clicked, which is itself off by a hundredth of it at most.
      const told = traceTolerance(off, [clicked], errors);
      expect(Math.hypot(x - trueX, y - trueY)).toBeLessThanOrEqual(told * 1.01);
    }),
  );
});
