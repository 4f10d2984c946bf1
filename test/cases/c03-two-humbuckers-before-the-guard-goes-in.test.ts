import { describe, expect, it } from "vitest";
import { meterReadings } from "../../src/bench/meter/readings.ts";
import { coilFromReading } from "../../src/bench/meter/solve-backwards.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { withIdealPots } from "../ideal-pots.ts";

function guard(pot: object, bridge: number, neck: number) {
  const humbucker = (resistance: number) => ({ kind: "pickup", coils: { coil: { resistance, inductance: 4.5 } } });
  return withIdealPots(
    readBuild({
      presolder: 1,
      parts: {
        neck: humbucker(neck),
        bridge: humbucker(bridge),
        toggle: { kind: "switch", type: "toggle-3" },
        volume: { kind: "pot", role: "volume", taper: "audio", ...pot },
        jack: { kind: "jack" },
      },
      wires: [
        ["bridge.hot", "toggle.A1"],
        ["neck.hot", "toggle.A2"],
        ["toggle.A0", "volume.3"],
        ["volume.1", "volume.case"],
        ["bridge.ground", "volume.case"],
        ["neck.ground", "volume.case"],
        ["volume.case", "jack.sleeve"],
        ["volume.2", "jack.tip"],
      ],
    }),
  );
}

// 470k in parallel with each coil, and with both; worked by hand.
describe("a guard with two humbuckers on a pot sold as 500k that measures 470k", () => {
  const coils = [8000, 7000].map((reading) => coilFromReading(reading, 470e3).ohms) as [number, number];

  it("has coils of 8.139 kΩ and 7.106 kΩ behind readings of 8.0 and 7.0", () => {
    expect(coils[0]).toBeCloseTo(8138.5, 0);
    expect(coils[1]).toBeCloseTo(7105.8, 0);
  });

  it("reads 3.763 kΩ with both pickups on", () => {
    const { readings } = meterReadings(guard({ resistance: "500k", measured: "470k" }, ...coils));
    const jack = readings.filter((reading) => reading.label.startsWith("jack, toggle")).map((reading) => reading.ohms!);
    expect(jack[0]).toBeCloseTo(8000, 6);
    expect(jack[1]).toBeCloseTo(3763, 0);
    expect(jack[2]).toBeCloseTo(7000, 6);
  });

  it("uses the measured track, and takes only the meter's own error as its tolerance", () => {
    const across = { between: ["volume.1", "volume.3"] as const, settings: { volume: 0 } };
    const open = guard({ resistance: "500k", measured: "470k" }, 1e7, 1e7);
    const [probe] = meterReadings(open, { probes: [across] }).probes;
    expect(probe!.high! / probe!.low!).toBeLessThan(1.03);
  });
});
