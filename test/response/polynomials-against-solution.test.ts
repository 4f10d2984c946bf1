import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parseLongForm } from "../../src/build-file/build-file.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { Controls, type Settings } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { ParametricNetwork } from "../../src/network/parametric.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { solvedTransfers } from "../../src/response/transfers.ts";
import { casesOf } from "../effort.ts";
import { circuits, onePickup, threeSingles } from "../fixtures/circuits.ts";
import { blendedChannels, blendedHumbuckers } from "../fixtures/many-parts.ts";

const frequencies = logSpaced(20, 20_000, 61);
const fine = logSpaced(20, 20_000, 301);
/** 1e-7 of the transfer is 1e-6 dB: a thousandth of what curves promise. */
const MAX_RELATIVE_ERROR = 1e-7;
/** −220 dB, below which no digits are promised. */
const FLOOR = 1e-11;
const SWEEP = { tone: [0, 0.3, 1, 5, 9.9, 10], volume: [0, 0.1, 1, 5, 10] };

function expectSolved(build: Build, engine: ResponseEngine, states: readonly Settings[]): void {
  const maker = new CircuitMaker(build);
  for (const settings of states) {
    const fast = engine.transfersIn(settings).perSource(frequencies);
    const slow = solvedTransfers(maker.circuitIn(settings), maker.sources).perSource(frequencies);
    for (const [source, { re, im }] of slow.entries()) {
      for (let i = 0; i < re.length; i++) {
        const error = Math.hypot(fast[source]!.re[i]! - re[i]!, fast[source]!.im[i]! - im[i]!);
        const most = MAX_RELATIVE_ERROR * Math.hypot(re[i]!, im[i]!) + FLOOR;
        if (!(error <= most)) expect(error).toBeLessThanOrEqual(most);
      }
    }
  }
}

describe("polynomial transfers equal the network solved frequency by frequency", () => {
  test.each(circuits)("$name, dial ends included", ({ build: input }) => {
    const build = parseLongForm(input);
    const controls = new Controls(build);
    const axes = controls.main ? { [controls.main.name]: [1, 2, 3, 4, 5], ...SWEEP } : SWEEP;
    expectSolved(build, new ResponseEngine(build), expandSweep(controls, axes));
    expectSolved(build, new ResponseEngine(build, { isKept: true }), expandSweep(controls, axes));
  });

  test.each(circuits)("$name, planned, with the volume at rest at 10, at 3 and at 0", ({ build: input }) => {
    const build = parseLongForm(input);
    const controls = new Controls(build);
    const engine = new ResponseEngine(build);
    for (const volume of [10, 3, 0]) {
      const states = expandSweep(controls, undefined, { volume });
      engine.plan(states);
      expectSolved(build, engine, states);
      // What was not planned is answered too.
      expectSolved(build, engine, expandSweep(controls, { volume: [1.5, 7], tone: [0, 2] }));
    }
  });

  test.each(readdirSync("scenarios"))("%s, every setting of its sweep by polynomials", (file) => {
    const scenario = JSON.parse(readFileSync(`scenarios/${file}`, "utf8")) as { build: object };
    const build = readBuild(scenario.build);
    const states = expandSweep(new Controls(build));
    const engine = new ResponseEngine(build);
    engine.plan(states);
    expectSolved(build, engine, states);
    expect(states.filter((settings) => !engine.transfersIn(settings).levelAndPhase)).toEqual([]);
  });

  test.each([
    ["channels", 5, blendedChannels(5)],
    ["channels", 10, blendedChannels(10)],
    ["humbuckers", 4, blendedHumbuckers(4)],
    ["humbuckers", 12, blendedHumbuckers(12)],
  ])("%s at once, %i of them, planned and not", (_, __, input) => {
    const build = parseLongForm(input);
    const states = expandSweep(new Controls(build), { volume: [0.5, 10], volume2: [1, 6] });
    const planned = new ResponseEngine(build);
    planned.plan(states);
    for (const engine of [planned, new ResponseEngine(build), new ResponseEngine(build, { isKept: true })])
      expectSolved(build, engine, states);
  });

  test("a pot at rest a hair from its end is at its end, planned too", () => {
    const build = readBuild(threeSingles());
    const controls = new Controls(build);
    for (const [volume, end] of [
      [9.99999999999998, 10],
      [9.999999999999998, 10],
    ] as const) {
      const [near, at] = [volume, end].map((dial) => {
        const states = expandSweep(controls, { lever: [1, 3], tone: [0, 4, 10] }, { volume: dial });
        const engine = new ResponseEngine(build);
        engine.plan(states);
        return states.map((state) => curveOf(engine.transfersIn(state), fine).magnitude);
      });
      for (const [index, levels] of near!.entries())
        levels.forEach((level, i) => void expect(Math.abs(level - at![index]![i]!)).toBeLessThan(1e-6));
    }
  });

  test("polynomials, not the slow solution, answer nearly every setting of the default sweep", () => {
    let answered = 0;
    let asked = 0;
    for (const { build: input } of circuits) {
      const build = parseLongForm(input);
      const maker = new CircuitMaker(build);
      for (const settings of expandSweep(new Controls(build))) {
        const { network, outputNode } = maker.templateIn(settings);
        asked++;
        if (new ParametricNetwork(network, outputNode).transfersAt(maker.trackOhms(settings))) answered++;
      }
    }
    expect(answered / asked).toBeGreaterThan(0.95);
  });
});

describe("a chain of many tiny resistors, whose determinant leaves the range that products of four stay in", () => {
  const chains: [count: number, resistance: number][] = [
    [12, 0.001],
    [16, 0.001],
    [20, 0.001],
    [30, 0.001],
    [40, 0.0001],
    [12, 1e-6],
  ];
  test.each(casesOf(chains, 2))("%i of %d Ω", (count, resistance) => {
    const names = Array.from({ length: count }, (_, index) => `link${index}`);
    const build = parseLongForm(
      onePickup({
        parts: Object.fromEntries(names.map((name) => [name, { kind: "resistor", resistance }])),
        wires: [
          ["pickup.hot", "link0.a"],
          ...names.slice(1).map((name, index) => [`link${index}.b`, `${name}.a`]),
          [`${names.at(-1)}.b`, "volume.3"],
          ["volume.2", "jack.tip"],
          ["volume.1", "jack.sleeve"],
          ["pickup.ground", "jack.sleeve"],
          ["tone.2", "volume.3"],
          ["tone.1", "cap.a"],
          ["cap.b", "jack.sleeve"],
        ],
      }),
    );
    const engine = new ResponseEngine(build);
    const maker = new CircuitMaker(build);
    for (const settings of expandSweep(new Controls(build))) {
      const { magnitude, phase } = curveOf(engine.transfersIn(settings), fine);
      const slow = curveOf(solvedTransfers(maker.circuitIn(settings), maker.sources), fine);
      const furthest = (ours: Float64Array, theirs: Float64Array) =>
        Math.max(...ours.map((value, i) => Math.abs(value - theirs[i]!)));
      expect(furthest(magnitude, slow.magnitude)).toBeLessThan(1e-4);
      expect(furthest(phase, slow.phase)).toBeLessThan(1e-3);
    }
  });
});
