import { describe, expect, test } from "vitest";
import { type CoilInput, PICKUP_TYPES } from "../../src/build-file/catalogue/pickup-types.ts";
import { hasRoomForCover, isCovered, withCover, withoutCover } from "../../src/build-file/cover.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { magnitudeDb } from "../../src/response/level-and-phase.ts";

/**
 * One humbucker with its cover on, less the same with it off, both into 200 kΩ ∥ 470 pF and the instrument: dB over its level at
 * 200 Hz. Open data set strayr/pickupAnalyseR-data (CC0-1.0), its raw curves reduced; the coil's constants from the same runs.
 */
const MEASURED: readonly (readonly [hertz: number, decibels: number])[] = [
  [1000, -0.2],
  [1500, -0.43],
  [2000, -0.67],
  [2500, -0.8],
  [3000, -0.86],
  [3500, -0.83],
  [4000, -0.84],
  [5000, -0.98],
  [6000, -1.14],
  [8000, -1.68],
];
const OPEN: CoilInput = {
  resistance: 18_600,
  inductance: 7.5,
  capacitance: 156e-12,
  loss: [{ resistance: 22_700, inductance: 2.49 }],
};
/** Siemens across the open pickup, instrument's included. */
const OPEN_SIEMENS = 1.07e-6;

/** The catalogue's with such a cover. */
const COVERED = ["humbucker-vintage", "mini-humbucker"];

function levels(coil: CoilInput, frequenciesHz: Float64Array): Float64Array {
  const build = readBuild({
    presolder: 1,
    parts: { pickup: { kind: "pickup", coils: { coil } }, jack: { kind: "jack" } },
    wires: [
      ["pickup.hot", "jack.tip"],
      ["pickup.ground", "jack.sleeve"],
    ],
    load: { resistance: 1 / (1 / 200e3 + OPEN_SIEMENS), capacitance: 470e-12 },
  });
  return magnitudeDb(new ResponseEngine(build).transfersIn(new Controls(build).atRest).total(frequenciesHz));
}

describe("a cover of low loss", () => {
  test("dims a real pickup under the usual load by what was measured with it on and off, within 0.3 dB", () => {
    const frequencies = Float64Array.from([200, ...MEASURED.map(([hertz]) => hertz)]);
    const [off, on] = [levels(OPEN, frequencies), levels(withCover(OPEN), frequencies)];
    for (const [i, [hertz, measured]] of MEASURED.entries()) {
      const dimmed = on[i + 1]! - on[0]! - (off[i + 1]! - off[0]!);
      expect(Math.abs(dimmed - measured), `${hertz} Hz`).toBeLessThan(0.3);
    }
  });

  test.each(PICKUP_TYPES.map(({ name, coils }) => [name, coils] as const))(
    "comes off %s as it went on",
    (name, coils) => {
      for (const coil of Object.values(coils)) {
        const [on, off] = [withCover(coil), withoutCover(coil)];
        expect(isCovered(on)).toBe(true);
        expect(isCovered(off)).toBe(false);
        expect(withCover(on)).toEqual(on);
        expect(withoutCover(off)).toEqual(off);
        expect(isCovered(coil), name).toBe(COVERED.includes(name));
        expect(COVERED.includes(name) ? withCover(off) : withoutCover(on)).toEqual(coil);
      }
    },
  );

  test("leaves a coil's DC resistance as it is, and is read from what a person writes", () => {
    const written: CoilInput = {
      ...OPEN,
      inductance: "7.5H",
      loss: "1.5M",
      shielding: { shelf: "1.37kHz", depth: 1.4 },
    };
    const covered = withCover(written);
    expect(covered.loss).toEqual([{ resistance: "1.5M" }, { resistance: "1.88M" }]);
    expect(covered.shielding).toEqual([written.shielding, { pole: 10_500 }]);
    expect(withoutCover({ ...covered, shielding: [{ pole: "10.5kHz" }] })).toEqual({
      ...OPEN,
      inductance: "7.5H",
      loss: "1.5M",
    });
    expect(levels(withCover(OPEN), Float64Array.of(0.01))[0]).toBeCloseTo(levels(OPEN, Float64Array.of(0.01))[0]!, 9);
  });

  test("has room beside two metals, and beside three where it is one of them", () => {
    const pole = { pole: "4kHz" };
    const metals = (shielding: CoilInput["shielding"]) => hasRoomForCover({ ...OPEN, shielding });
    expect([metals(undefined), metals(pole), metals([pole, pole]), metals([pole, pole, pole])]).toEqual([
      true,
      true,
      true,
      false,
    ]);
    expect(metals([pole, pole, { pole: "10.5kHz" }])).toBe(true);
  });
});
