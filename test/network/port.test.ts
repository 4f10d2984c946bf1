import { describe, expect, test } from "vitest";
import { impedanceAt } from "../../src/bench/meter/impedance-readings.ts";
import { Controls, withControl } from "../../src/build-file/settings.ts";
import { relevantPart } from "../../src/network/blocks.ts";
import { solveTransfers } from "../../src/network/nodal-analysis.ts";
import { assemblePencil } from "../../src/network/pencil.ts";
import { Port } from "../../src/network/port.ts";
import { slotStarts, slotValues } from "../../src/network/slots.ts";
import { CircuitMaker } from "../../src/response/circuit.ts";
import { scenarioBuilds } from "../bench/scenario-builds.ts";

const FREQUENCIES = [70, 900, 4000, 12_000];

function circuits() {
  return scenarioBuilds.flatMap(({ name, build }) => {
    const controls = new Controls(build);
    const settings = [controls.atRest, ...controls.pots.map((pot) => withControl(controls, controls.atRest, pot, 4))];
    return settings.map((each, index) => ({
      name: `${name} ${index}`,
      circuit: new CircuitMaker(build).circuitIn(each),
    }));
  });
}

const cases = circuits();

describe("a network seen from its port", () => {
  test.each(cases)("$name: impedance and transfers are those of the general solver", ({ circuit }) => {
    const network = relevantPart(circuit.network, circuit.outputNode);
    const port = new Port(network, circuit.outputNode);
    const values = slotValues(network);
    const expected = impedanceAt(circuit, Float64Array.from(FREQUENCIES));
    const transfers = solveTransfers(assemblePencil(network), circuit.outputNode, Float64Array.from(FREQUENCIES));
    for (const [i, hz] of FREQUENCIES.entries()) {
      port.solveAt(hz, values);
      const z = expected[i]!;
      const size = Math.hypot(z!.re, z!.im);
      expect(Math.hypot(port.impedanceRe - z!.re, port.impedanceIm - z!.im) / size).toBeLessThan(1e-7);
      const [ownRe, ownIm] = port.transferFromNode(circuit.outputNode);
      expect([ownRe, ownIm]).toEqual([port.impedanceRe, port.impedanceIm]);
      expect(port.transferFromNode(0)).toEqual([0, 0]);
      for (const [source, spectrum] of transfers.entries()) {
        const weights = transfers.map((_, each) => (each === source ? 1 : 0));
        const [re, im] = port.transfer(weights);
        expect(Math.hypot(re - spectrum.re[i]!, im - spectrum.im[i]!)).toBeLessThan(1e-7);
        const emfs = network.elements.map((each) => (each.kind === "branch" && each.source === source ? 1 : 0));
        const [emfRe, emfIm] = port.transferOfEmfs(emfs);
        expect(Math.hypot(re - emfRe, im - emfIm)).toBe(0);
      }
    }
  });

  test.each(cases)("$name: slopes are what a small change of each value makes", ({ circuit }) => {
    const network = relevantPart(circuit.network, circuit.outputNode);
    const port = new Port(network, circuit.outputNode);
    const values = slotValues(network);
    const weights = Array.from({ length: network.sourceCount }, (_, index) => 1 + 0.3 * index);
    const slopes = Array.from({ length: 4 }, () => new Float64Array(port.slotCount));
    const starts = slotStarts(network);
    const shelfStep = 1e-4;
    for (const hz of FREQUENCIES) {
      port.solveAt(hz, values);
      port.impedanceSlopes(slopes[0]!, slopes[1]!);
      port.transferSlopes(weights, slopes[2]!, slopes[3]!);
      const size = Math.hypot(port.impedanceRe, port.impedanceIm);
      for (let slot = 0; slot < starts.at(-1)!; slot++) {
        const step = values[slot] === 0 ? shelfStep : 1e-4 * values[slot]!;
        const at = (sign: number) => {
          port.solveAt(
            hz,
            values.map((value, each) => (each === slot ? value + sign * step : value)),
          );
          return [port.impedanceRe / size, port.impedanceIm / size, ...port.transfer(weights)];
        };
        if (
          values[slot] === 0 &&
          network.elements.some(({ kind }, index) => kind === "resistor" && starts[index] === slot)
        )
          continue;
        const [above, below] = [at(1), at(-1)];
        for (const [part, slope] of slopes.entries()) {
          const change = (above[part]! - below[part]!) / 2;
          const told = (slope[slot]! * step) / (part < 2 ? size : 1);
          expect(Math.abs(change - told)).toBeLessThan(2e-5 * Math.max(1e-4, Math.abs(change)) + 1e-9);
        }
      }
    }
  });
});
