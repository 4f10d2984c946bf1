import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { magnitudeDb, unwrappedPhaseDegrees } from "../../src/response/level-and-phase.ts";
import { threeSingles } from "../fixtures/circuits.ts";

describe("unwrapped phase", () => {
  test("follows a delay of 50 µs to −360° at 20 kHz without a step", () => {
    const frequencies = logSpaced(20, 20_000, 400);
    const angles = frequencies.map((frequency) => -2 * Math.PI * frequency * 50e-6);
    const phase = unwrappedPhaseDegrees({ re: angles.map(Math.cos), im: angles.map(Math.sin) });
    for (const [i, angle] of angles.entries()) expect(phase[i]).toBeCloseTo((angle * 180) / Math.PI, 7);
  });

  test("is the same for a frequency whatever else is asked for, and in whatever order", () => {
    const build = readBuild(threeSingles());
    const transfers = new ResponseEngine(build).transfersIn(new Controls(build).atRest);
    const dense = curveOf(transfers, logSpaced(20, 20_000, 600));
    const sparse = curveOf(transfers, Float64Array.of(20_000, 20, 4000));
    expect(sparse.phase[0]).toBeCloseTo(dense.phase[599]!, 6);
    expect(sparse.phase[1]).toBeCloseTo(dense.phase[0]!, 6);
    expect(sparse.phase[2]).toBeLessThan(0);
  });

  test("and level equal atan2 and 20·log10 for any numbers", () => {
    const part = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(part, part), { minLength: 2, maxLength: 30 }), (values) => {
        const spectrum = { re: Float64Array.from(values, ([re]) => re), im: Float64Array.from(values, ([, im]) => im) };
        const level = magnitudeDb(spectrum);
        const phase = unwrappedPhaseDegrees(spectrum);
        for (const [i, [re, im]] of values.entries()) {
          const size = Math.hypot(re, im);
          if (size < 1e-9) continue;
          expect(level[i]).toBeCloseTo(20 * Math.log10(size), 7);
          const turn = (phase[i]! - (Math.atan2(im, re) * 180) / Math.PI) / 360;
          expect(Math.abs(turn - Math.round(turn))).toBeLessThan(1e-8);
        }
      }),
      { numRuns: 500 },
    );
  });
});
