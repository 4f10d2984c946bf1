import { describe, expect, it } from "vitest";
import { ownMeterOf } from "../../../../src/bench/meter/own/own-meter.ts";
import { Settler } from "../../../../src/bench/meter/own/settling.ts";
import { meterReadings } from "../../../../src/bench/meter/readings.ts";
import { readBuild } from "../../../../src/build-file/read-build.ts";
import { Controls } from "../../../../src/build-file/settings.ts";
import { onePickup } from "../../../fixtures/circuits.ts";

/** The capacitor's second leg hangs loose: nothing but the meter is across it. */
function build(capacitance: string) {
  const { wires, ...rest } = onePickup({ parts: { cap: { kind: "cap", capacitance } } }) as { wires: unknown[] };
  return readBuild({ ...rest, wires: wires.filter((wire) => !JSON.stringify(wire).includes("cap.b")) });
}
const pocket = ownMeterOf("manual-2000");

function settle(
  capacitance: string,
  between: readonly [string, string],
  ohms: number | null,
  range: number,
  meter = pocket,
) {
  const guard = build(capacitance);
  const settings = new Controls(guard).atRest;
  return new Settler(guard, meter).settle({ label: "", between, settings }, ohms, range)!;
}

describe("how long a reading takes", () => {
  it.each(["22n", "47n", "1u"])(
    "a capacitor of %s charges through the meter until it is over its range: R·C·ln 3",
    (value) => {
      const farads = Number(value.replace("n", "e-9").replace("u", "e-6"));
      // Half the range's end in series; R shows as R·v / (1 − v), over its end of 2 R from v = 2/3 on. Steps are 12 % apart.
      const wanted = 10e6 * farads * Math.log(3);
      const { seconds } = settle(value, ["cap.a", "cap.b"], null, 20e6);
      expect(seconds / wanted).toBeGreaterThan(0.98);
      expect(seconds / wanted).toBeLessThan(1.14);
    },
  );

  it("is nothing for a coil, whose L / R is under a millisecond", () => {
    expect(settle("22n", ["jack.tip", "jack.sleeve"], 5859, 20_000).seconds).toBeLessThan(0.06);
  });

  it("is told where it is over half a second, and only there", () => {
    const probes = [{ between: ["cap.a", "cap.b"] as const }];
    const shown = (value: string, meter = pocket) => meterReadings(build(value), { probes, meter }).probes[0]!.meter!;
    expect(shown("10n").wait).toBeNull();
    expect(shown("100n")).toMatchObject({ display: "1", wait: expect.closeTo(1.1, 0) });
    expect(shown("100n").text).toMatch(/wait 1.5 s until it stands still$/);
    expect(shown("100n", ownMeterOf("auto-6000")).text).toMatch(
      /wait 3.5 s until it stands still; it goes through its ranges meanwhile$/,
    );
  });

  it("shows as a jump of a needle where enough charge flows, by hand: C·R / 0.3 s of its arc", () => {
    const needle = ownMeterOf("needle");
    expect(settle("47n", ["cap.a", "cap.b"], null, 200e3, needle).kick).toBeCloseTo((47e-9 * 200e3) / 0.3, 3);
    const [probe] = meterReadings(build("470n"), { meter: needle, probes: [{ between: ["cap.a", "cap.b"] }] }).probes;
    expect(probe!.meter!.text).toMatch(/the needle first jumps by 31 % of its arc/);
  });
});
