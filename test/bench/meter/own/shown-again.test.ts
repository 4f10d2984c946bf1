import { describe, expect, it } from "vitest";
import { displayOf } from "../../../../src/bench/meter/own/display.ts";
import { widened } from "../../../../src/bench/meter/own/meter-error.ts";
import { METER_KIND_NAMES } from "../../../../src/bench/meter/own/meter-kinds.ts";
import { coilOnMeter } from "../../../../src/bench/meter/own/meter-notes.ts";
import { type MeterSpec, type OwnMeter, ownMeterOf } from "../../../../src/bench/meter/own/own-meter.ts";
import { fits, NO_GRANT, readShown } from "../../../../src/bench/meter/shown.ts";
import { readBuild } from "../../../../src/build-file/read-build.ts";
import { createUniform } from "../../../../src/choice/uniform.ts";
import { effort } from "../../../effort.ts";
import { onePickup } from "../../../fixtures/circuits.ts";

/** What a person writes down of a display: its unit's letter behind, a needle's figure times its scale, a lone 1 with its blank. */
function writtenFrom(meter: OwnMeter, ohms: number | null): ReturnType<typeof readShown> {
  const { display, unit, range } = displayOf(meter, ohms);
  if (unit === "") return readShown(display === "1" ? "1 ." : display, meter.ranging === "manual" ? range : undefined);
  const times = meter.ranging === "needle" ? range / meter.ranges[0]! : 1;
  return readShown(times === 1 ? `${display}${unit.replace("Ω", "")}` : String(Number(display) * times));
}

function expectToFit(spec: MeterSpec, ohms: number | null): void {
  const meter = ownMeterOf(spec);
  const told = `${JSON.stringify(spec)} of ${ohms}`;
  expect(fits(widened(meter, { low: ohms, high: ohms }), writtenFrom(meter, ohms)!, NO_GRANT), told).toBe(true);
}

describe("what a meter shows of a resistance, written down, fits that resistance", () => {
  it.each(METER_KIND_NAMES)("%s, at the edges of its ranges and on every one it may stand on", (kind) => {
    const { ranges, counts } = ownMeterOf(kind);
    const edges = ranges.flatMap((end) => [end / 10, end * (1 - 1 / counts), end * (1 - 0.5 / counts), end]);
    for (const range of [undefined, ...ranges])
      for (const leads of [0, 0.3, 10])
        for (const ohms of [...edges.filter((edge) => edge > 2), 1e9, null])
          expectToFit({ kind, leads, ...(range ? { range } : {}) }, ohms);
  });

  it("whatever ranges and counts somebody says of theirs", () => {
    const uniform = createUniform(3);
    const between = (low: number, high: number) => low * (high / low) ** uniform();
    const oneOf = <T>(list: readonly T[]) => list[Math.floor(uniform() * list.length)]!;
    for (let trial = 0; trial < effort(500, 10_000); trial++) {
      const ranges = Array.from({ length: 4 }, () => Number(between(1, 1e8).toPrecision(3))).sort((a, b) => a - b);
      if (new Set(ranges).size < ranges.length) continue;
      const ranging = oneOf(["auto", "manual", "needle"] as const);
      const counts = oneOf([100, 1999, 2000, 6000, 2_000_000]);
      const error = { share: oneOf([0, 0.01]), digits: oneOf([0, 3]) };
      const openFrom = oneOf([undefined, between(1, 1e12)]);
      expectToFit({ ranging, counts, ranges, error, openFrom, leads: oneOf([0, 0.3, 50]) }, between(2, 1e12));
    }
  });

  it("of a joint, with leads of ten ohms", () => {
    const meter = ownMeterOf({ kind: "manual-2000", leads: 10 });
    expect(fits(widened(meter, { low: 0, high: 1 }), writtenFrom(meter, 0)!, NO_GRANT)).toBe(true);
  });
});

describe("what a meter's current does in a coil", () => {
  it("is of all its inductance, that of its loss sections too: ½LI² and I·√(L/C)", () => {
    const section = { resistance: 25e3, inductance: 2 };
    const build = readBuild(
      onePickup({
        pickup: {
          kind: "pickup",
          coils: { coil: { resistance: 8000, inductance: 4, capacitance: 1e-10, loss: [section] } },
        },
      }),
    );
    const { pickup } = build.parts;
    if (pickup?.kind !== "pickup") throw new TypeError("no pickup");
    const { amps, joules, kickVolts } = coilOnMeter(ownMeterOf("manual-2000"), pickup.coils.coil!, 20);
    expect(joules).toBeCloseTo((6 * amps ** 2) / 2, 18);
    expect(kickVolts).toBeCloseTo(amps * Math.sqrt(6 / 1e-10), 9);
  });
});
