import { describe, expect, it } from "vitest";
import { meterReadings } from "../../../src/bench/meter/readings.ts";
import { rangeText } from "../../../src/bench/meter/shown.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { onePickup } from "../../fixtures/circuits.ts";

const { readings } = meterReadings(readBuild(onePickup()));
const labelled = (label: string) => readings.find((reading) => reading.label === label)!;

describe("the end of a pot's track", () => {
  it("may read up to 1 % of the track where nothing else is read", () => {
    // By hand: 2.5 kΩ of a 250 kΩ track beside the other 247.5 kΩ and a coil of 6 kΩ.
    const atEnd = (2500 * 253_500) / 256_000;
    const { ohms, low, high, potEndUnder } = labelled("jack, volume at 0");
    // By hand: 1 Ω beside all the rest.
    expect(ohms).toBeCloseTo(1, 4);
    expect([low, potEndUnder]).toEqual([0, 50]);
    expect(high).toBeCloseTo(atEnd, 6);
  });

  it("changes no other reading: continuity stays under an ohm, and a sweep passes its ends by", () => {
    for (const reading of readings.filter(({ label }) => label !== "jack, volume at 0"))
      expect(reading.potEndUnder, reading.label).toBeUndefined();
    expect(labelled("volume case to jack sleeve")).toMatchObject({ ohms: 0, high: 1 });
  });

  it("is told by what a good one stays under, and from where on something is wrong", () => {
    expect(rangeText(labelled("jack, volume at 0"))).toBe("under 50 Ω; above 2.48 kΩ something is wrong");
    expect(rangeText(labelled("volume case to jack sleeve"))).toBe("under 1 Ω");
  });
});
