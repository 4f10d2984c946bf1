import { execFileSync, spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { DIELECTRICS, dielectricOf } from "../../src/build-file/catalogue/dielectrics.ts";
import { CATALOGUE } from "../../src/build-file/catalogue.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings, type RawSettings, rawSettings } from "../../src/build-file/settings.ts";
import { MAX_LOSS_FACTOR } from "../../src/limits.ts";
import { DirectCurrent } from "../../src/network/direct-current.ts";
import { capLadder } from "../../src/response/cap-ladder.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { curveOf } from "../../src/response/curve.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { magnitudeDb } from "../../src/response/level-and-phase.ts";
import { solvedTransfers } from "../../src/response/transfers.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { describeWith } from "../tools.ts";

const cap = (rest: object) => ({ kind: "cap", capacitance: 22e-9, ...rest }) as Parameters<typeof capLadder>[0];

/** Capacitance and tan δ of a ladder, by the admittances of its branches. */
function measuredAt(ladder: ReturnType<typeof capLadder>, hertz: number) {
  let [real, lossy] = [ladder.farads, 0];
  for (const { ohms, farads } of ladder.branches) {
    const x = 2 * Math.PI * hertz * ohms * farads;
    real += farads / (1 + x * x);
    lossy += (farads * x) / (1 + x * x);
  }
  return { farads: real, tanDelta: lossy / real };
}

const guardWith = (rest: object) => readBuild(onePickup({ parts: { cap: cap(rest) } }));
const SETTINGS: readonly RawSettings[] = [{ tone: 0 }, { tone: 3 }, { tone: 7, volume: 6 }, {}];

describe("a cap's loss", () => {
  it.each(DIELECTRICS)(
    "of $title is its tan δ at 1 and 10 kHz, and what it is marked with is its value at 1 kHz",
    ({ name, loss }) => {
      const ladder = capLadder(cap({ dielectric: name }));
      const [low, high] = [measuredAt(ladder, 1000), measuredAt(ladder, 10_000)];
      expect(low.farads).toBeCloseTo(22e-9, 18);
      expect(low.tanDelta).toBeCloseTo(loss[0], 12);
      expect(high.tanDelta).toBeCloseTo(loss[1], 12);
    },
  );

  it("of one's own stays within a tenth from 100 Hz to 10 kHz, up to the most that is allowed, of passive parts alone", () => {
    for (const lossFactor of [1e-4, 0.02, MAX_LOSS_FACTOR]) {
      const ladder = capLadder(cap({ dielectric: "mica", lossFactor }));
      for (const hertz of logSpaced(100, 10_000, 40))
        expect(Math.abs(measuredAt(ladder, hertz).tanDelta / lossFactor - 1)).toBeLessThan(0.1);
      for (const { ohms, farads } of ladder.branches) expect(Math.min(ohms, farads)).toBeGreaterThan(0);
    }
  });

  it("is none where nothing is said of it, where it is said to be none, or where it is too little to reckon with", () => {
    for (const rest of [{}, { dielectric: "film-pet", lossFactor: 0 }, { lossFactor: 1e-300 }])
      expect(capLadder(cap(rest))).toEqual({ farads: 22e-9, branches: [] });
    const least = guardWith({ capacitance: 1e-300, dielectric: "film-pet" });
    expect(
      curveOf(new ResponseEngine(least).transfersIn(new Controls(least).atRest), Float64Array.of(1000)).peak,
    ).not.toBeNull();
  });

  it("lets no direct current through, so that a meter reads as ever", () => {
    const ohms = (rest: object) => {
      const build = guardWith(rest);
      const { network, outputNode } = new CircuitMaker(build).circuitIn(new Controls(build).atRest);
      return new DirectCurrent(network).resistanceBetween(outputNode, 0);
    };
    expect(ohms({ dielectric: "ceramic-z5u" })).toBeCloseTo(ohms({})!, 6);
  });
});

describe("guards whose caps are all lossy", () => {
  it("are solved by polynomials as exactly as frequency by frequency", () => {
    const hertz = logSpaced(20, 20_000, 40);
    for (const { plan } of CATALOGUE.plans.filter((_, index) => index % 6 === 0)) {
      const build = readBuild({ presolder: 1, plan: { ...plan, trebleBleed: { capacitance: "680p" } } });
      const parts = Object.entries(build.parts).map(([name, part]) => [
        name,
        part.kind === "cap" ? { ...part, dielectric: "ceramic-z5u" } : part,
      ]);
      const lossy = { ...build, parts: Object.fromEntries(parts) } as typeof build;
      const controls = new Controls(lossy);
      const [first, second] = [{}, { tone: 4 }].map((raw) =>
        parseSettings(controls, controls.potsWithRole("tone").length > 0 ? raw : {}),
      );
      const engine = new ResponseEngine(lossy);
      engine.plan([first!, second!]);
      const maker = new CircuitMaker(lossy);
      const solved = magnitudeDb(solvedTransfers(maker.circuitIn(second!), maker.sources).total(hertz));
      const { magnitude } = curveOf(engine.transfersIn(second!), hertz);
      for (const [i, level] of magnitude.entries()) expect(Math.abs(level - solved[i]!)).toBeLessThan(1e-6);
    }
  });
});

describeWith("ngspice", "guards with lossy caps, read a second time for ngspice", () => {
  it.each([{ dielectric: "film-pet" }, { dielectric: "ceramic-z5u" }, { dielectric: "paper", lossFactor: 0.1 }])(
    "is the same within 0.001 dB in every setting: %o",
    (rest) => {
      const long = onePickup({ parts: { cap: cap(rest) } });
      const build = readBuild(long);
      const controls = new Controls(build);
      const states = SETTINGS.map((raw) => parseSettings(controls, raw));
      const asked = states.map((state) => ({ build: long, settings: rawSettings(controls, state) }));
      const answers = JSON.parse(
        execFileSync("/usr/bin/python3", ["test/outside/long_form_to_ngspice.py"], {
          input: JSON.stringify(asked),
        }).toString(),
      ) as [number, number, number][][];
      const engine = new ResponseEngine(build);
      engine.plan(states);
      for (const [index, rows] of answers.entries()) {
        const { magnitude } = curveOf(
          engine.transfersIn(states[index]!),
          Float64Array.from(rows, ([hertz]) => hertz),
        );
        for (const [i, [, re, im]] of rows.entries())
          expect(Math.abs(magnitude[i]! - 20 * Math.log10(Math.hypot(re, im)))).toBeLessThan(0.001);
      }
    },
  );
});

/** The same guard written out, its cap a complex C(1 − j tan δ) that is the same at all frequencies. */
const NUMPY = `
import sys, json, numpy as np
job = json.load(sys.stdin)
f = np.array(job["hertz"])
w = 2j*np.pi*f
cap = w*22e-9*(1 - 1j*job["loss"])
y = w*110e-12 + 1/250e3 + w*500e-12 + 1e-6 + 1/(job["track"] + 1/cap)
print(json.dumps((20*np.log10(np.abs(1/(1 + (6000 + w*2.4)*y)))).tolist()))
`;

describeWith("scipy", "a guard with a lossy cap, held to a constant loss angle in NumPy", () => {
  it.each([
    { tone: 0, track: 1e-9 },
    { tone: 10, track: 250e3 },
  ])("is the same within 0.05 dB from 100 Hz to 10 kHz with the tone at $tone", ({ tone, track }) => {
    const hertz = logSpaced(100, 10_000, 60);
    const run = spawnSync("/usr/bin/python3", ["-c", NUMPY], {
      input: JSON.stringify({ hertz: [...hertz], loss: dielectricOf("ceramic-c0g").loss[0], track }),
      encoding: "utf8",
    });
    const wanted = JSON.parse(run.stdout) as number[];
    const build = withIdealPots(guardWith({ dielectric: "ceramic-c0g" }));
    const state = parseSettings(new Controls(build), { tone });
    const { magnitude } = curveOf(new ResponseEngine(build).transfersIn(state), hertz);
    for (const [i, level] of magnitude.entries()) expect(Math.abs(level - wanted[i]!)).toBeLessThan(0.05);
  });
});
