import { describe, expect, it } from "vitest";
import { meterReadings } from "../../src/bench/meter/readings.ts";
import { coilFromReading } from "../../src/bench/meter/solve-backwards.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { withIdealPots } from "../ideal-pots.ts";

// Values from the closed form coil = reading · pot / (pot − reading), worked by hand.
describe("a reading at the jack is lower than the pickup", () => {
  it("finds 5.290 kΩ behind 5.18 kΩ on a 250k pot, 2.07 % more than the meter shows", () => {
    const { ohms } = coilFromReading(5180, 250e3);
    expect(ohms).toBeCloseTo(5289.6, 0);
    expect(100 * (1 - 5180 / ohms)).toBeCloseTo(2.07, 2);
  });

  it("finds 5.234 kΩ on a 500k pot, 1.04 % more", () => {
    const { ohms } = coilFromReading(5180, 500e3);
    expect(ohms).toBeCloseTo(5234.2, 0);
    expect(100 * (1 - 5180 / ohms)).toBeCloseTo(1.04, 2);
  });

  it("reads 5.18 kΩ again on a guard with the coil it found", () => {
    const pickup = {
      kind: "pickup",
      coils: { coil: { resistance: coilFromReading(5180, 250e3).ohms, inductance: 2.4 } },
    };
    expect(meterReadings(withIdealPots(readBuild(onePickup({ pickup })))).readings[0]?.ohms).toBeCloseTo(5180, 6);
  });

  it("is not moved by the tone knob or its cap, which blocks direct current", () => {
    const between = ["jack.tip", "jack.sleeve"] as const;
    const readings = ["1n", "22n", "100n"].flatMap((capacitance) => {
      const build = withIdealPots(readBuild(onePickup({ parts: { cap: { kind: "cap", capacitance } } })));
      const probes = [0, 2, 5, 10].map((tone) => ({ between, settings: { tone } }));
      return meterReadings(build, { probes }).probes.map((probe) => probe.ohms);
    });
    for (const ohms of readings) expect(ohms! / readings[0]!).toBeCloseTo(1, 12);
  });

  it("refuses a reading that no coil behind the pot can give", () => {
    expect(() => coilFromReading(260e3, 250e3)).toThrow(/solve\.coil\.reading/);
  });
});
