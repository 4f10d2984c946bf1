import { describe, expect, it } from "vitest";
import { meterReadings } from "../../src/bench/meter/readings.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { withIdealPots } from "../ideal-pots.ts";

const half = { kind: "pickup", coils: { coil: { resistance: "5k", inductance: "2H" } } };
/** A broken coil passes no direct current; across the break there is only stray capacitance. */
const brokenHalf = { kind: "cap", capacitance: "50p" };

/** Two 5k halves in series across a volume pot of 218k. */
function reading(broken: boolean, between: readonly [string, string]): number | null {
  const [top, bottom] = broken ? ["high.a", "high.b"] : ["high.hot", "high.ground"];
  const build = withIdealPots(
    readBuild({
      presolder: 1,
      parts: {
        low: half,
        high: broken ? brokenHalf : half,
        volume: { kind: "pot", role: "volume", resistance: "218k", taper: "linear" },
        jack: { kind: "jack" },
      },
      wires: [
        ["low.hot", "volume.3"],
        ["low.ground", top],
        [bottom, "volume.1"],
        ["volume.1", "jack.sleeve"],
        ["volume.2", "jack.tip"],
      ],
    }),
  );
  return meterReadings(build, { probes: [{ between }] }).probes[0]!.ohms;
}

// A meter across a broken coil sees the way round it: the pot and the good half in series. Worked by hand.
describe("one half of a split pickup reads 223k in place", () => {
  it("is the pot and the good half, seen round the broken one", () => {
    expect(reading(true, ["high.a", "high.b"])).toBeCloseTo(223e3, 3);
    expect(reading(true, ["low.hot", "low.ground"])).toBeCloseTo(5000, 6);
  });

  it("reads the pot at the jack while broken, not open, and 9.56 kΩ when mended", () => {
    expect(reading(true, ["jack.tip", "jack.sleeve"])).toBeCloseTo(218e3, 3);
    expect(reading(false, ["jack.tip", "jack.sleeve"])).toBeCloseTo(9561.4, 1);
  });
});
