import { execFileSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { meterReadings } from "../../src/bench/meter/readings.ts";
import { CATALOGUE } from "../../src/build-file/catalogue.ts";
import { parseQuantity } from "../../src/build-file/quantity.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings, rawSettings } from "../../src/build-file/settings.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { describeWith } from "../tools.ts";

const ohms = (text: string) => parseQuantity(text, "resistance").value;
const farads = (text: string) => parseQuantity(text, "capacitance").value;
const farPerMetre = (text: string) => parseQuantity(text, "capacitancePerLength").value;
const FREQUENCIES = logSpaced(20, 20_000, 60);

function levels(rest: object): Float64Array {
  const build = readBuild(onePickup({ rest }));
  return Float64Array.from(
    curveOf(new ResponseEngine(build).transfersIn(new Controls(build).atRest), FREQUENCIES).magnitude,
  );
}

const furthest = (a: Float64Array, b: Float64Array) =>
  a.reduce((most, level, index) => Math.max(most, Math.abs(level - b[index]!)), 0);

describeWith("ngspice", "cables with a resistance and inputs with a stopper, read a second time for ngspice", () => {
  const lead = { length: "6m", capacitance: "100p", resistance: "33m" };
  const cases: [string, object][] = [
    ...CATALOGUE.loads.map(({ name, use: _use, ...load }): [string, object] => [name, { cable: lead, load }]),
    ["a lead of 500 Ω a metre", { cable: { ...lead, resistance: 500 }, load: { stopper: "68k", capacitance: "105p" } }],
  ];
  it.each(cases)("%s", (_, rest) => {
    const long = onePickup({ rest });
    const build = readBuild(long);
    const controls = new Controls(build);
    const states = [{}, { volume: 5 }, { volume: 0 }].map((raw) => parseSettings(controls, raw));
    const asked = states.map((state) => ({ build: long, settings: rawSettings(controls, state) }));
    const answers = JSON.parse(
      execFileSync("/usr/bin/python3", ["test/outside/long_form_to_ngspice.py"], {
        input: JSON.stringify(asked),
      }).toString(),
    ) as [number, number, number][][];
    const engine = new ResponseEngine(build);
    for (const [index, rows] of answers.entries()) {
      const { magnitude } = curveOf(
        engine.transfersIn(states[index]!),
        Float64Array.from(rows, ([hertz]) => hertz),
      );
      for (const [i, [, re, im]] of rows.entries())
        expect(Math.abs(magnitude[i]! - 20 * Math.log10(Math.hypot(re, im)))).toBeLessThan(0.001);
    }
  });
});

describe("a lead", () => {
  const [usual] = CATALOGUE.cables.filter(({ name }) => name === "ordinary");

  it("of 6 m changes nothing by its conductor's resistance", () => {
    const cable = { length: "6m", capacitance: "100p" };
    const measured = levels({ cable: { ...cable, resistance: usual!.resistance } });
    expect(furthest(measured, levels({ cable }))).toBeLessThan(0.001);
  });

  it("has the resistance of 26 strands of 34 AWG in copper of 0.017241 Ω·mm²/m (IEC 60028)", () => {
    // AWG: diameter 0.127 mm · 92^((36 − n)/39).
    const strand = 0.127 * 92 ** ((36 - 34) / 39);
    const area = 26 * (Math.PI / 4) * strand ** 2;
    expect(0.017241 / area).toBeCloseTo(parseQuantity(usual!.resistance, "resistancePerLength").value, 3);
  });

  it("of the usual lengths reaches the 510 and 575 pF that two were measured at (D. Lamkins, Cable comparison)", () => {
    const perMetre = CATALOGUE.cables.map(({ capacitance }) => farPerMetre(capacitance));
    for (const measured of [510e-12, 575e-12]) {
      expect(measured / Math.max(...perMetre)).toBeLessThan(6.1);
      expect(measured / Math.min(...perMetre)).toBeGreaterThan(3);
    }
  });

  it("stays out of what a meter reads at the jack", () => {
    const readings = (cable: object) =>
      meterReadings(readBuild(onePickup({ rest: { cable } })), { celsius: 20, probes: [] });
    const plain = { length: "6m", capacitance: "100p" };
    expect(readings({ ...plain, resistance: 100 })).toEqual(readings(plain));
  });
});

describe("an amplifier's input", () => {
  it("that is the low one of two draws exactly what 68k to the grid and 68k from there to ground draw", () => {
    const low = CATALOGUE.loads.find(({ name }) => name === "low-of-two")!;
    const [r, grid] = [68e3, 105e-12];
    for (const hertz of FREQUENCIES) {
      const w = 2 * Math.PI * hertz;
      // (1 + jx)/(R·(2 + jx)) with x = ωRC, against 1/R1 + jωC'/(1 + jωR'C').
      const x = w * r * grid;
      const wanted = { re: (2 + x * x) / (r * (4 + x * x)), im: x / (r * (4 + x * x)) };
      const [own, across] = [w * farads(low.capacitance), w * farads(low.capacitance) * ohms(low.stopper!)];
      const found = {
        re: 1 / ohms(low.resistance) + (own * across) / (1 + across * across),
        im: own / (1 + across * across),
      };
      // 26 pF is written for 26.25.
      expect(Math.abs(found.re / wanted.re - 1)).toBeLessThan(0.01);
      expect(Math.abs(found.im / wanted.im - 1)).toBeLessThan(0.015);
    }
  });

  it("leaves its first valve 0.8 dB less at 10 kHz than the input gets", () => {
    const { capacitance, stopper } = CATALOGUE.loads.find(({ name }) => name === "triode")!;
    const corner = 2 * Math.PI * 10_000 * ohms(stopper!) * farads(capacitance);
    expect(10 * Math.log10(1 + corner * corner)).toBeCloseTo(0.8, 2);
  });

  it("is heard less by the guitar behind a stopper than with its capacitance straight across", () => {
    const load = { resistance: "1M", capacitance: "400p" };
    const [bare, across] = [levels({ load: { resistance: "1M" } }), levels({ load })];
    const behind = levels({ load: { ...load, stopper: "1M" } });
    expect(furthest(behind, bare)).toBeLessThan(0.2 * furthest(across, bare));
  });
});
