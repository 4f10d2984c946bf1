import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { copperFactor } from "../../../src/bench/meter/copper.ts";
import { meterModelOf, meterStateOf } from "../../../src/bench/meter/meter-model.ts";
import { NOT_SWEPT, Ohmmeter } from "../../../src/bench/meter/ohmmeter.ts";
import { meterReadings } from "../../../src/bench/meter/readings.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { DirectCurrent } from "../../../src/network/direct-current.ts";
import { CircuitMaker } from "../../../src/response/circuit.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { withIdealPots } from "../../ideal-pots.ts";

const JACK = ["jack.tip", "jack.sleeve"] as const;

describe("standing readings", () => {
  it("cover every position, volume at 0, the volume sweep, tones at 0 and every case", () => {
    const labels = meterReadings(readBuild(threeSingles())).readings.map((reading) => reading.label);
    expect(labels).toEqual([
      "jack, lever 1",
      "jack, lever 2",
      "jack, lever 3",
      "jack, lever 4",
      "jack, lever 5",
      "jack, lever 1, volume at 0",
      "jack, lever 1, highest as volume is swept",
      "jack, lever 1, every tone at 0",
      "jack, lever 2, every tone at 0",
      "jack, lever 3, every tone at 0",
      "jack, lever 4, every tone at 0",
      "jack, lever 5, every tone at 0",
      "volume.1 to jack sleeve",
      "volume case to jack sleeve",
      "tone1 case to jack sleeve",
      "tone2 case to jack sleeve",
    ]);
  });

  it("add the strings, and the cover where it is wired", () => {
    const build = onePickup({
      parts: { claw: { kind: "terminal", role: "claw" } },
    }) as { wires: unknown[] };
    const wires = [...build.wires, ["claw", "volume.case"], ["pickup.shield", "pickup.ground"]];
    const { readings } = meterReadings(readBuild({ ...build, wires }));
    const extra = readings.filter((reading) => reading.between[0] === "claw" || reading.between[0] === "pickup.shield");
    expect(extra.map(({ ohms, high }) => ({ ohms, high }))).toEqual([
      { ohms: 0, high: 1 },
      { ohms: 0, high: 1 },
    ]);
  });

  it("say which tolerances are common practice and not the build's", () => {
    const build = readBuild(onePickup({ parts: { volume: { kind: "pot", resistance: "250k", tolerance: 0.1 } } }));
    expect(meterReadings(build).defaultTolerances).toEqual([
      { part: "pickup", coil: "coil", tolerance: 0.05 },
      { part: "tone", tolerance: 0.2 },
    ]);
  });

  it("widen with tolerance exactly to all parts low and all parts high", () => {
    const [reading] = meterReadings(readBuild(onePickup())).readings;
    const parallel = (a: number, b: number) => (a * b) / (a + b);
    expect(reading!.low).toBeCloseTo(parallel(6e3 * 0.95, 250e3 * 0.8), 6);
    expect(reading!.high).toBeCloseTo(parallel(6e3 * 1.05, 250e3 * 1.2), 6);
  });

  it("hold every reading of a guard whose parts are anywhere within tolerance", () => {
    const nominal = meterReadings(readBuild(threeSingles())).readings;
    const within = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(within, (deviations) => {
        const file = threeSingles() as {
          parts: Record<string, { resistance?: string; coils?: { coil: { resistance: string } } }>;
        };
        const parts = Object.fromEntries(
          Object.entries(file.parts).map(([name, part], index) => {
            const factor = (tolerance: number) => 1 + tolerance * (deviations[index % 6] ?? 0);
            const scaled = (text: string, tolerance: number) =>
              Number(text.replace("k", "")) * 1000 * factor(tolerance);
            if (part.coils) {
              const coil = { ...part.coils.coil, resistance: scaled(part.coils.coil.resistance, 0.05) };
              return [name, { ...part, coils: { coil } }];
            }
            return [name, part.resistance ? { ...part, resistance: scaled(part.resistance, 0.2) } : part];
          }),
        );
        const readings = meterReadings(readBuild({ ...file, parts })).readings;
        for (const [index, { ohms }] of readings.entries()) {
          if (nominal[index]!.low === null) expect(ohms).toBeNull();
          else expect(ohms!).toBeGreaterThanOrEqual(nominal[index]!.low! * (1 - 1e-9));
          if (ohms !== null) expect(ohms).toBeLessThanOrEqual(nominal[index]!.high! * (1 + 1e-9));
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe("temperature", () => {
  // 8.000 kΩ at 20 °C is 8471.6 Ω at 35 °C and 7528.4 Ω at 5 °C, with IEC 60028's 0.00393 a kelvin.
  it("moves a coil as standard copper moves", () => {
    expect(8000 * copperFactor(35)).toBeCloseTo(8471.6, 1);
    expect(8000 * copperFactor(5)).toBeCloseTo(7528.4, 1);
  });

  it("moves the coil and not the pot", () => {
    const build = readBuild(onePickup());
    const probes = [{ between: ["pickup.hot", "pickup.ground"] as const }];
    const coil = 6000 * copperFactor(35);
    const { readings } = meterReadings(build, { celsius: 35, probes });
    expect(readings[0]!.ohms).toBeCloseTo((coil * 250e3) / (coil + 250e3), 6);
  });
});

describe("probes", () => {
  it("reads between any two lugs in any settings, null where no direct current flows", () => {
    const { probes } = meterReadings(readBuild(threeSingles()), {
      probes: [
        { between: ["cap.a", "jack.sleeve"], settings: { lever: 1 } },
        { between: ["neck.hot", "lever.A0"], settings: { lever: 5 } },
        { between: ["neck.finish", "jack.tip"], settings: { lever: 1 } },
      ].map((probe) => ({
        ...probe,
        between: probe.between.map((lug) => lug.replace("neck.finish", "neck.coil.finish")) as [string, string],
      })),
    });
    expect(probes[0]!.ohms).toBeNull();
    expect(probes[1]!.ohms).toBe(0);
    expect(probes[2]!.ohms).toBeGreaterThan(5900);
    expect(probes[2]!.between).toEqual(["neck.hot", "jack.tip"]);
  });

  it.each([
    [{ between: ["jack.tip", "nowhere.1"] as const }, "probes.0.between.1"],
    [{ between: JACK, settings: { lever: 9 } }, "probes.0.settings.lever"],
    [{ between: JACK, sweep: "tone" }, "probes.0.sweep"],
  ])("refuses %o and names %s", (probe, path) => {
    expect(() => meterReadings(readBuild(threeSingles()), { probes: [probe] })).toThrow(
      expect.objectContaining({ faults: [expect.objectContaining({ path })] }),
    );
  });
});

describe("the lean ohmmeter", () => {
  it("agrees with the general DC solution between any two lugs in any settings", () => {
    const file = threeSingles({
      parts: {
        shunt: { kind: "resistor", resistance: "150k" },
        extra: { kind: "pot", resistance: "1M", noLoad: true },
      },
      wires: [
        ["shunt.a", "volume.3"],
        ["shunt.b", "volume.2"],
        ["extra.3", "lever.A0"],
        ["extra.1", "volume.case"],
      ],
    });
    const build = withIdealPots(readBuild(file));
    const controls = new Controls(build);
    const model = meterModelOf(build, 20);
    const meter = new Ohmmeter(model);
    const maker = new CircuitMaker(build);
    const lug = fc.nat({ max: model.parts.lugs.lugs.length - 1 });
    const dial = fc.constantFrom(0, 2, 5, 7.5, 10);
    fc.assert(
      fc.property(
        lug,
        lug,
        fc.integer({ min: 1, max: 5 }),
        dial,
        dial,
        dial,
        (from, to, lever, volume, tone, extra) => {
          const settings = parseSettings(controls, { lever, volume, tone, extra });
          const circuit = maker.circuitIn(settings, { withCableAndLoad: false });
          const expected = new DirectCurrent(circuit.network).resistanceBetween(
            circuit.nodeOfLug(from),
            circuit.nodeOfLug(to),
          );
          const ohms = meter.measure(model, meterStateOf(model, settings), { from, to, sweptTrack: NOT_SWEPT }, 0);
          if (expected === null) expect(ohms).toBe(Number.POSITIVE_INFINITY);
          else expect(Math.abs(ohms - expected)).toBeLessThanOrEqual(1e-9 * expected);
        },
      ),
      { numRuns: 400 },
    );
  });
});
