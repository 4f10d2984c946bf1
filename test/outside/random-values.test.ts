import { expect, it } from "vitest";
import { DIELECTRIC_NAMES } from "../../src/build-file/catalogue/dielectrics.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, rawSettings } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { createUniform } from "../../src/choice/uniform.ts";
import { ResponseEngine } from "../../src/response/engine.ts";
import { effort } from "../effort.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { describeWith } from "../tools.ts";
import { expectCurveOf, secondReading } from "./second-reading.ts";

const uniform = createUniform(17);
const between = (low: number, high: number) => low * (high / low) ** uniform();
const oneOf = <T>(list: readonly T[]) => list[Math.floor(uniform() * list.length)]!;
const upTo = <T>(most: number, make: () => T) => Array.from({ length: Math.floor(uniform() * (most + 1)) }, make);

const metal = () => oneOf([{ pole: between(50, 1e6) }, { shelf: between(50, 1e6), depth: 60 * uniform() }]);
const section = () => ({ resistance: between(5e3, 1e6), inductance: between(0.1, 5) });

function coil() {
  const loss = oneOf([[], [section()], [section(), { resistance: between(2e5, 2e6) }]]);
  const values = { resistance: between(3e3, 1e4), inductance: between(1, 8), capacitance: between(5e-11, 4e-10) };
  return { ...values, shielding: upTo(3, metal), ...(loss.length > 0 ? { loss } : {}) };
}

/** Two coils of one pickup, each behind its own metal. */
function pickup() {
  const coils = { a: coil(), b: { ...coil(), winding: "reverse", magnet: "south" } };
  return { kind: "pickup", conductors: 2, coupling: 0.13, coils };
}

function pot() {
  const resistance = between(1e4, 2e6);
  const angles = { mechanical: 300, electrical: oneOf([300, 285, 270, 225, 30]) };
  const taper = oneOf(["linear", "audio", "reverse-audio"]);
  return { kind: "pot", resistance, taper, angles, endResistance: between(0.01, Math.min(1e6, resistance / 2)) };
}

function guard() {
  const made = oneOf([{ dielectric: oneOf(DIELECTRIC_NAMES) }, { lossFactor: between(1e-8, 0.2) }]);
  const cap = { kind: "cap", capacitance: between(1e-10, 1e-6), ...made };
  return threeSingles({
    parts: { neck: pickup(), bridge: pickup(), volume: pot(), tone1: pot(), tone2: pot(), cap },
    rest: {
      cable: { length: between(0.1, 100), capacitance: between(1e-11, 1e-9), resistance: between(1e-3, 1000) },
      load: { resistance: between(1e4, 1e9), capacitance: between(1e-12, 1e-9), stopper: between(10, 1e7) },
    },
  });
}

describeWith("ngspice", "whatever values a guard has, all it may say of its parts", () => {
  it("gives the curve that an independent reading gives in ngspice", () => {
    const cases = Array.from({ length: effort(12, 200) }, () => {
      const build = guard();
      const read = readBuild(build);
      const controls = new Controls(read);
      const dials = ["volume", "tone1", "tone2"].map((name) => [name, [oneOf([0, 0.3, 5, 9.7, 10, 10 * uniform()])]]);
      const state = expandSweep(controls, { lever: [oneOf([1, 2, 3, 4, 5])], ...Object.fromEntries(dials) })[0]!;
      return { build, read, state, settings: rawSettings(controls, state) };
    });
    const answers = secondReading(cases.map(({ build, settings }) => ({ build, settings })));
    for (const [index, rows] of answers.entries()) {
      const { read, state } = cases[index]!;
      expect(rows).not.toBeNull();
      expectCurveOf(new ResponseEngine(read), state, rows!);
    }
  });
});
