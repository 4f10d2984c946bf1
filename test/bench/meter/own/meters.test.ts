import { describe, expect, it } from "vitest";
import { displayOf } from "../../../../src/bench/meter/own/display.ts";
import { errorOhms, widened } from "../../../../src/bench/meter/own/meter-error.ts";
import { METER_KIND_NAMES } from "../../../../src/bench/meter/own/meter-kinds.ts";
import { ownMeterOf } from "../../../../src/bench/meter/own/own-meter.ts";
import { canStandOn } from "../../../../src/bench/meter/own/range-for.ts";
import { meterReadings } from "../../../../src/bench/meter/readings.ts";
import { rangeText } from "../../../../src/bench/meter/shown.ts";
import { readBuild } from "../../../../src/build-file/read-build.ts";
import { onePickup } from "../../../fixtures/circuits.ts";

const pocket = ownMeterOf({ kind: "manual-2000", zeroed: true });
const auto = ownMeterOf({ kind: "auto-6000", zeroed: true });
const needle = ownMeterOf("needle");

describe("what a meter shows", () => {
  // The ranges of 2000-count meters are the trade's: 200 Ω, 2k, 20k, 200k, 2M, 20M; a digit is the 2000th of the range.
  it.each([
    [12.34, "12.3 on the 200 Ω range"],
    [199.97, "0.200 on the 2 kΩ range"],
    [7420, "7.42 on the 20 kΩ range"],
    [63_970, "64.0 on the 200 kΩ range"],
    [250e3, "0.250 on the 2 MΩ range"],
    [null, "1 alone at the left on the 20 MΩ range"],
    [25e6, "1 alone at the left on the 20 MΩ range"],
  ])("of %s Ω, 2000 counts set by hand: %s", (ohms, text) => {
    expect(displayOf(pocket, ohms).text).toBe(text);
  });

  it.each([
    [12.34, "12.3 Ω"],
    [5859, "5.859 kΩ"],
    [7420, "7.42 kΩ"],
    [null, "OL"],
  ])("of %s Ω, 6000 counts and a range of its own choice: %s", (ohms, text) => {
    expect(displayOf(auto, ohms).text).toBe(text);
  });

  it("is the leads' too, until they are zeroed", () => {
    const leads = { kind: "auto-6000", leads: 0.5 } as const;
    expect(displayOf(ownMeterOf(leads), 0).text).toBe("0.5 Ω");
    expect(displayOf(ownMeterOf({ ...leads, zeroed: true }), 0).text).toBe("0.0 Ω");
  });

  it("stays on the range that it stands on, and is over it above its end", () => {
    const fixed = ownMeterOf({ kind: "manual-2000", range: 20_000 });
    expect(displayOf(fixed, 250e3)).toMatchObject({ range: 20_000, display: "1" });
    expect(displayOf(fixed, 330).display).toBe("0.33");
  });

  it("cannot stand on a range that ends below it, or whose last digit is coarser", () => {
    const stands = (ohms: number, range: number) => canStandOn(pocket, range, ohms);
    expect([stands(7420, 20_000), stands(7400, 200_000), stands(0, 2e6)]).toEqual([true, true, true]);
    expect([stands(7420, 200_000), stands(7420, 2000), stands(0.3, 20e6)]).toEqual([false, false, false]);
  });

  it("of a needle is read on the scale whose middle is nearest", () => {
    expect(displayOf(needle, 7420).text).toBe("about 7.4 on the ×1k scale");
    expect(displayOf(needle, null).display).toBe("∞");
  });
});

describe("a meter's error", () => {
  it("is its share and its digits, by hand: 1 % and 2.5 digits of 10 Ω at 7.42 kΩ", () => {
    expect(errorOhms(pocket, 7420)).toBeCloseTo(74.2 + 25, 9);
  });

  it("of a needle is least in the middle of the scale, four times its share of the arc (deflection m / (m + R))", () => {
    for (const middle of needle.ranges) expect(errorOhms(needle, middle) / middle).toBeCloseTo(4 * 0.03, 12);
    expect(errorOhms({ ...needle, range: 2000 }, 18_000) / 18_000).toBeCloseTo(
      (0.03 * 20_000 ** 2) / (2000 * 18_000),
      12,
    );
  });

  it("widens what a sound guard may read, never narrows it, for every kind", () => {
    for (const kind of METER_KIND_NAMES) {
      const meter = ownMeterOf(kind);
      for (const [low, high] of [
        [0, 1],
        [5000, 6000],
        [200e3, 300e3],
      ] as const) {
        const shown = widened(meter, { low, high });
        expect(shown.low!).toBeLessThanOrEqual(low + meter.leads);
        expect(shown.high ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(high);
      }
      expect(widened(meter, { low: null, high: null })).toEqual({ low: null, high: null });
    }
  });

  it("knows no ohms above what it can show", () => {
    expect(widened(ownMeterOf("manual-2000-to-2M"), { low: 1.9e6, high: 2.2e6 }).high).toBeNull();
  });
});

describe("readings on the person's meter", () => {
  const build = readBuild(onePickup());

  it("say what stands on it, and are within what it may show", () => {
    const plain = meterReadings(build);
    const own = meterReadings(build, { meter: pocket });
    expect(own.readings.length).toBe(plain.readings.length);
    for (const [index, reading] of own.readings.entries()) {
      const { low, high } = plain.readings[index]!;
      if (low !== null) expect(reading.low!).toBeLessThanOrEqual(low);
      if (high !== null) expect(reading.high!).toBeGreaterThanOrEqual(high);
      expect(reading.meter!.text).not.toBe("");
    }
    // 6 kΩ beside 250 kΩ: 5.859 kΩ.
    expect(own.readings[0]!.meter).toMatchObject({ range: 20_000, display: "5.86", unit: "kΩ", wait: null });
    expect(plain.readings[0]).not.toHaveProperty("meter");
  });

  it("of a track's end begin on the range of a good one, and say how far up one that is just allowed lies", () => {
    const end = meterReadings(build, { meter: pocket }).readings.find(({ label }) => label === "jack, volume at 0")!;
    expect(end.meter!.text).toBe("1.0 on the 200 Ω range; above that go up, to the 20 kΩ range");
  });

  it("say of a coil what the meter's current does in it", () => {
    const { meter } = meterReadings(build, { meter: pocket });
    expect(meter!.notes.join(" ")).toMatch(/Through a coil of 6 kΩ this meter drives about 6.3 µA, 38 mV across it/);
    expect(meter!.notes.join(" ")).toMatch(/1 alone at the left/);
  });

  it("name what is open as the meter shows it", () => {
    expect(rangeText({ low: null, high: null }, "OL")).toBe("open (OL)");
  });
});
