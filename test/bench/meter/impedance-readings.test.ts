import { describe, expect, it } from "vitest";
import { impedanceReadings } from "../../../src/bench/meter/impedance-readings.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { threeSingles } from "../../fixtures/circuits.ts";

/** A coil straight at the jack, or as `wires` say. */
function coilAlone(coil: object, wires?: [string, string][]) {
  return readBuild({
    presolder: 1,
    parts: {
      pickup: { kind: "pickup", coils: { coil } },
      cap: { kind: "cap", capacitance: "22n" },
      jack: { kind: "jack" },
    },
    wires: wires ?? [
      ["pickup.hot", "jack.tip"],
      ["pickup.ground", "jack.sleeve"],
    ],
  });
}

describe("inductance and capacitance at the jack", () => {
  it("is the coil's own where nothing is across it", () => {
    const [low, high] = impedanceReadings(coilAlone({ resistance: 6700, inductance: 3.4 }));
    for (const { seriesOhms, henries, farads } of [low!, high!]) {
      expect(seriesOhms).toBeCloseTo(6700, 6);
      expect(henries).toBeCloseTo(3.4, 9);
      expect(farads).toBeNull();
    }
  });

  // Apparent inductance of L beside C, f below the resonance f0: L / (1 − (f/f0)²); +1.0 % at 1 kHz for f0 = 10 kHz, +4.2 % for 5 kHz.
  it.each([
    [10_000, 1.0101],
    [5_000, 1.0417],
  ])("rises at 1 kHz with a resonance at %i Hz, by the factor %f", (resonance, factor) => {
    const inductance = 2.4;
    const capacitance = 1 / ((2 * Math.PI * resonance) ** 2 * inductance);
    const [low, high] = impedanceReadings(coilAlone({ resistance: 1e-3, inductance, capacitance }));
    expect(high!.henries! / inductance).toBeCloseTo(factor, 4);
    expect(low!.henries! / inductance).toBeLessThan(1.001);
  });

  it("is a capacitance where only a cap lies between tip and sleeve", () => {
    const readings = impedanceReadings(
      coilAlone({ resistance: 6000, inductance: 2.4 }, [
        ["cap.a", "jack.tip"],
        ["cap.b", "jack.sleeve"],
      ]),
    );
    for (const { farads, henries } of readings) {
      expect(farads! / 22e-9).toBeCloseTo(1, 6);
      expect(henries).toBeNull();
    }
  });

  it("is null where the tip leads nowhere, and 0 Ω where tip and sleeve are one", () => {
    const coil = { resistance: 6000, inductance: 2.4 };
    expect(impedanceReadings(coilAlone(coil, []))[0]).toMatchObject({ seriesOhms: null, henries: null, farads: null });
    const shorted = impedanceReadings(coilAlone(coil, [["jack.tip", "jack.sleeve"]]))[0]!;
    expect(shorted).toMatchObject({ seriesOhms: 0, reactanceOhms: 0, henries: null, farads: null });
  });

  it("is given at 120 Hz and 1 kHz in every position", () => {
    const readings = impedanceReadings(readBuild(threeSingles()));
    expect(readings.map(({ frequency }) => frequency)).toEqual([1, 2, 3, 4, 5].flatMap(() => [120, 1000]));
    expect(new Set(readings.map(({ label }) => label)).size).toBe(10);
  });
});
