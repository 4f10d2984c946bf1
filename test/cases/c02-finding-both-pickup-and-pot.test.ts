import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { meterReadings } from "../../src/bench/meter/readings.ts";
import { potAndCoilFromSweep } from "../../src/bench/meter/solve-backwards.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { withIdealPots } from "../ideal-pots.ts";

const between = ["jack.tip", "jack.sleeve"] as const;

function guard(coil: number, pot: number, wires?: unknown[]) {
  const pickup = { kind: "pickup", coils: { coil: { resistance: coil, inductance: 2.4 } } };
  const volume = { kind: "pot", role: "volume", resistance: pot, taper: "linear" };
  return withIdealPots(readBuild(onePickup({ pickup, parts: { volume }, ...(wires ? { wires } : {}) })));
}

const reversed = [
  ["pickup.hot", "volume.2"],
  ["pickup.ground", "volume.case"],
  ["volume.3", "jack.tip"],
  ["volume.1", "volume.case"],
  ["volume.case", "jack.sleeve"],
];

function at(build: ReturnType<typeof guard>, dial: number): number | null | undefined {
  return meterReadings(build, { probes: [{ between, settings: { volume: dial } }] }).probes[0]?.ohms;
}

function sweep(build: ReturnType<typeof guard>): number | null | undefined {
  return meterReadings(build, { probes: [{ between, sweep: "volume" }] }).probes[0]?.ohms;
}

// (xP) ∥ ((1 − x)P + coil), highest where both halves are equal: (P + coil) / 4. Worked by hand.
describe("finding both pickup and pot from outside", () => {
  it("reads 5.859 kΩ at 10, 63.96 kΩ at half the track, 64.0 kΩ at most, and 0 at 0", () => {
    const build = guard(6e3, 250e3);
    expect(at(build, 10)).toBeCloseTo(5859.375, 3);
    expect(at(build, 5)).toBeCloseTo(63_964.84, 1);
    expect(sweep(build)).toBeCloseTo(64_000, 2);
    expect(at(build, 5.12)).toBeCloseTo(64_000, 2);
    expect(at(build, 0)).toBe(0);
  });

  it("reads at most 127.0 kΩ with 8 kΩ on 500k", () => {
    expect(sweep(guard(8e3, 500e3))).toBeCloseTo(127_000, 2);
  });

  it("reads the whole pot at 0 where the pickup sits on the wiper", () => {
    const build = guard(6e3, 250e3, reversed);
    expect(at(build, 0)).toBeCloseTo(250_000, 3);
    expect(at(build, 10)).toBeCloseTo(5859.375, 3);
  });

  it("climbs about tenfold as the volume comes down, then drops to nothing", () => {
    const build = guard(6e3, 250e3);
    const readings = [10, 9, 8, 7, 6].map((dial) => at(build, dial)!);
    for (let i = 1; i < readings.length; i++) expect(readings[i]!).toBeGreaterThan(readings[i - 1]!);
    expect(sweep(build)! / readings[0]!).toBeGreaterThan(10);
  });

  it("gets pot and coil back from the two readings, whatever they are", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 500, max: 30e3, noNaN: true }),
        fc.constantFrom(1e5, 25e4, 3e5, 5e5, 1e6),
        (coil, pot) => {
          const found = potAndCoilFromSweep((coil * pot) / (coil + pot), (coil + pot) / 4);
          expect(found.coil / coil).toBeCloseTo(1, 9);
          expect(found.pot / pot).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});
