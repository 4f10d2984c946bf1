import { describe, expect, it } from "vitest";
import { NetworkBuilder } from "../../src/network/elements.ts";
import { assemblePencil, REFERENCE_OHMS } from "../../src/network/pencil.ts";
import { StepResponse } from "../../src/network/step-response.ts";

/** 1 V behind `ohms` and `henries` from node 0 to node 1, the rest as `add` puts it. */
function responseOf(ohms: number, henries: number, add: (network: NetworkBuilder) => void): StepResponse {
  const network = new NetworkBuilder(3);
  network.sourceBranch(1, 0, ohms, henries);
  add(network);
  return new StepResponse(assemblePencil(network.build()), 0);
}

/** Amperes after so many steps, each an eighth longer than the one before, and when that is. */
function comesTo(response: StepResponse, step: number, count: number): { seconds: number; amps: number } {
  let seconds = 0;
  for (let i = 0, length = step; i < count; i++, length *= 1.125) {
    response.advance(length);
    seconds += length;
  }
  return { seconds, amps: Math.abs(response.current) / REFERENCE_OHMS };
}

describe("a source switched on", () => {
  it.each([2, 6, 12])("charges a capacitor by exp(−t/RC), after %i steps", (count) => {
    const response = responseOf(10e6, 0, (network) => network.capacitor(1, 0, 22e-9));
    const { seconds, amps } = comesTo(response, 5e-3, count);
    expect(amps / (Math.exp(-seconds / 0.22) / 10e6)).toBeCloseTo(1, 3);
  });

  it("builds its current up in a coil by 1 − exp(−t·R/L)", () => {
    const response = responseOf(10e3, 2.4, (network) => network.resistor(1, 0, 6e3));
    const { seconds, amps } = comesTo(response, 2e-5, 8);
    expect((amps * 16e3) / (1 - Math.exp((-seconds * 16e3) / 2.4))).toBeCloseTo(1, 2);
  });

  it("ends at what flows for good, and has then brought a capacitor its charge C·V", () => {
    const divided = responseOf(1e6, 0, (network) => {
      network.capacitor(1, 0, 47e-9);
      network.resistor(1, 0, 3e6);
    });
    const { current, charge } = divided.end()!;
    expect(Math.abs(current) / REFERENCE_OHMS).toBeCloseTo(1 / 4e6, 12);
    // Of the 0.75 V across it, what flows beyond the end's own current: C·V·3/4, by Norton's current divider.
    expect(Math.abs(charge) / REFERENCE_OHMS).toBeCloseTo(47e-9 * 0.75 * 0.75, 12);
  });
});
