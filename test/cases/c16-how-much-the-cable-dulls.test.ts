import { describe, expect, test } from "vitest";
import { parseLongForm } from "../../src/build-file/build-file.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { levelsAt } from "./measured.ts";

// 1/(2π√LC); in print 2.4 H are said to resonate at about 6000 Hz with 300 pF and at a bit over 2000 Hz with a coiled cord of
// 2400 pF. 33 and 45 pF a foot are those of cables on sale. Peaks and levels were computed outside the project (see bench-guard.ts).
/** 250 kΩ volume and tone at 10, 22 nF, 1 MΩ load; the pickup of 6 kΩ, 2.4 H and 110 pF. */
const withCable = (length: string, capacitance: string) =>
  parseLongForm(onePickup({ rest: { cable: { length, capacitance } } }));

const peakOf = (build: ReturnType<typeof withCable>) =>
  curveOf(new ResponseEngine(build).transfersIn(new Controls(build).atRest), Float64Array.of(1000)).peak!;

/** A pickup of 2.4 H and no capacitance of its own, barely loaded: its peak is the formula's. */
const bareResonance = (capacitance: string) => {
  const coil = { resistance: 1, inductance: "2.4H" };
  const build = parseLongForm({
    presolder: 1,
    parts: { pickup: { kind: "pickup", coils: { coil } }, jack: { kind: "jack" } },
    wires: [
      ["pickup.hot", "jack.tip"],
      ["pickup.ground", "jack.sleeve"],
    ],
    cable: { length: "1m", capacitance },
    load: { resistance: "10M" },
  });
  return peakOf(build).frequency;
};

describe("C16: how much does the cable dull it?", () => {
  test("2.4 H with 300 pF resonates at 5931 Hz and with 2400 pF at 2097 Hz", () => {
    expect(bareResonance("300p")).toBeCloseTo(5931, 0);
    expect(bareResonance("2400p")).toBeCloseTo(2097, 0);
  });

  test("20 ft at 33 pF a foot are 660 pF and at 45 pF a foot 900 pF", () => {
    for (const [perFoot, farads] of [
      ["33pF/ft", 660e-12],
      ["45pF/ft", 900e-12],
    ] as const) {
      const { cable } = withCable("20ft", perFoot);
      expect(cable!.length * cable!.capacitance).toBeCloseTo(farads, 18);
    }
  });

  test.each([
    ["1m", "300p", 4420, 2.4],
    ["20ft", "33pF/ft", 3450, -1.1],
    ["20ft", "45pF/ft", 3060, -4.1],
    ["1m", "2400p", 1990, -14.0],
  ])("%s at %s: peak at %i Hz, level at 5 kHz %f dB re the EMF", (length, capacitance, peakHz, levelDb) => {
    const build = withCable(length, capacitance);
    const [level] = levelsAt(build, [5000]) as [number];
    expect(Math.abs(peakOf(build).frequency / peakHz - 1)).toBeLessThan(0.02);
    expect(Math.abs(level - levelDb)).toBeLessThan(0.3);
  });

  test("the coil's resistance with the cable's capacitance alone would put it at 29 kHz, and does not", () => {
    // 1/(2π·6 kΩ·900 pF) is 29.5 kHz.
    expect(peakOf(withCable("20ft", "45pF/ft")).frequency).toBeLessThan(3200);
  });
});
