import { describe, expect, it } from "vitest";
import { meterReadings } from "../../src/bench/meter/readings.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { withIdealPots } from "../ideal-pots.ts";

function guard(pot: object, shunt: string, across: readonly [string, string]) {
  return withIdealPots(
    readBuild({
      presolder: 1,
      parts: {
        pickup: { kind: "pickup", coils: { coil: { resistance: "6k", inductance: "2.4H" } } },
        volume: { kind: "pot", role: "volume", taper: "audio", ...pot },
        shunt: { kind: "resistor", resistance: shunt },
        jack: { kind: "jack" },
      },
      wires: [
        ["pickup.ground", "volume.1"],
        ["shunt.a", across[0]],
        ["shunt.b", across[1]],
        ["volume.1", "jack.sleeve"],
        ["volume.2", "jack.tip"],
      ],
      load: { resistance: "1G" },
    }),
  );
}

const OUTER = ["volume.1", "volume.3"] as const;

function acrossOuterLugs(pot: object, shunt: string): number | null {
  return meterReadings(guard(pot, shunt, OUTER), { probes: [{ between: OUTER }] }).probes[0]!.ohms;
}

// 1095 ∥ 1000 and 500 ∥ 500, worked by hand.
describe("a resistor across a pot's outer lugs", () => {
  it("makes 522.7k of a 1M pot that measures 1.095M and a 1M resistor", () => {
    expect(acrossOuterLugs({ resistance: "1M", measured: "1.095M" }, "1M")).toBeCloseTo(522_673, 0);
  });

  it("makes 250k of 500k and 500k", () => {
    expect(acrossOuterLugs({ resistance: "500k" }, "500k")).toBeCloseTo(250_000, 3);
  });

  it("leaves the taper alone, which one from wiper to an outer lug does not", () => {
    const half = (across: readonly [string, string]) => levelAtHalf(guard({ resistance: "500k" }, "500k", across));
    const bare = half(["jack.sleeve", "volume.1"]);
    expect(half(["volume.1", "volume.3"])).toBeCloseTo(bare, 1);
    expect(Math.abs(half(["volume.2", "volume.1"]) - bare)).toBeGreaterThan(0.5);
  });
});

/** Level in dB at 100 Hz of dial 5 relative to dial 10, the pickup on lug 3. */
function levelAtHalf(build: ReturnType<typeof guard>): number {
  const wired = { ...build, wires: [...build.wires, { from: "pickup.hot", to: "volume.3" }] };
  const controls = new Controls(wired);
  const engine = new ResponseEngine(wired);
  const level = (volume: number) => {
    const { re, im } = engine.transfersIn(parseSettings(controls, { volume })).total(Float64Array.of(100));
    return 20 * Math.log10(Math.hypot(re[0]!, im[0]!));
  };
  return level(5) - level(10);
}
