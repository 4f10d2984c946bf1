import { describe, expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { CircuitMaker } from "../../../src/response/circuit.ts";
import { curveOf } from "../../../src/response/curve.ts";
import { ResponseEngine } from "../../../src/response/engine.ts";
import { logSpaced } from "../../../src/response/frequencies.ts";
import { solvedTransfers } from "../../../src/response/transfers.ts";
import { effort } from "../../effort.ts";

/** Humbuckers one on top of the other, with hardly anything that damps them. */
function stacked(count: number, coil: object, coupling: number, spread: number): object {
  const names = Array.from({ length: count }, (_, index) => `pickup${index}`);
  const pickup = (index: number) => {
    const inductance = 3.2 * (1 + spread * index);
    const winding = { resistance: 4300, inductance, capacitance: 120e-12, ...coil };
    return {
      kind: "pickup",
      conductors: 2,
      coupling,
      coils: { slug: winding, screw: { ...winding, magnet: "south" } },
    };
  };
  return {
    presolder: 1,
    parts: {
      jack: { kind: "jack" },
      volume: { kind: "pot", role: "volume", resistance: "500k", taper: "audio" },
      ...Object.fromEntries(names.map((name, index) => [name, pickup(index)])),
    },
    wires: [
      ...names.map((name, index) => [`${name}.ground`, index === 0 ? "jack.sleeve" : `${names[index - 1]}.hot`]),
      [`${names.at(-1)}.hot`, "volume.3"],
      ["volume.1", "jack.sleeve"],
      ["volume.2", "jack.tip"],
    ],
  };
}

const frequencies = logSpaced(20, 96_000, effort(300, 1500));

describe("near-equal resonances that little damps", () => {
  test.each([
    ["four without loss, all alike", stacked(4, {}, 0.05, 0)],
    ["four without loss, a thousandth apart", stacked(4, {}, 0.12, 1e-3)],
    ["five with 1 MΩ across each coil", stacked(5, { loss: 1e6 }, 0.05, 1e-3)],
    ["eight tightly coupled", stacked(8, { capacitance: 200e-12 }, 0.9, 0)],
  ])("%s: polynomials, kept or not, are no further off than the contract allows", (_, input) => {
    const build = readBuild(input);
    const maker = new CircuitMaker(build);
    const state = new Controls(build).atRest;
    const truth = curveOf(solvedTransfers(maker.circuitIn(state), maker.sources), frequencies);
    for (const engine of [new ResponseEngine(build), new ResponseEngine(build, { isKept: true })]) {
      const { magnitude, phase } = curveOf(engine.transfersIn(state), frequencies);
      for (const [i, level] of truth.magnitude.entries()) {
        if (level < -150) continue;
        const off = Math.abs(magnitude[i]! - level);
        if (!(off < 0.0005)) expect.soft(off, `${frequencies[i]} Hz`).toBeLessThan(0.0005);
        const turn = Math.abs(phase[i]! - truth.phase[i]!) % 360;
        expect(Math.min(turn, 360 - turn)).toBeLessThan(0.005);
      }
    }
  });

  test("are the same in a list from the highest frequency down", () => {
    const build = readBuild(stacked(5, { loss: 1e6, capacitance: 226e-12 }, 0.05, 0.02));
    const state = new Controls(build).atRest;
    const upwards = logSpaced(20, 96_000, 400);
    const transfers = new ResponseEngine(build, { isKept: true }).transfersIn(state);
    const up = curveOf(transfers, upwards).magnitude;
    const down = curveOf(transfers, upwards.toReversed()).magnitude.reverse();
    for (const [i, level] of up.entries()) expect(down[i]!, `${upwards[i]} Hz`).toBeCloseTo(level, 5);
  });
});
