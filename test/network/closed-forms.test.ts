import { describe, expect, test } from "vitest";
import { DirectCurrent } from "../../src/network/direct-current.ts";
import { NetworkBuilder } from "../../src/network/elements.ts";
import { solveTransfers } from "../../src/network/nodal-analysis.ts";
import { assemblePencil } from "../../src/network/pencil.ts";

function gainAt(network: NetworkBuilder, output: number, frequencyHz: number): number {
  const [{ re, im }] = solveTransfers(assemblePencil(network.build()), output, Float64Array.of(frequencyHz)) as [
    { re: Float64Array; im: Float64Array },
  ];
  return Math.hypot(re[0]!, im[0]!);
}

/** EMF → R → L → C to ground, the output across C. */
function seriesResonance(ohms: number, henries: number, farads: number): NetworkBuilder {
  const network = new NetworkBuilder(2);
  network.sourceBranch(0, 1, ohms, henries);
  network.capacitor(0, 1, farads);
  return network;
}

describe("closed forms", () => {
  test("a divider of 10 k over 30 k gives 0.75", () => {
    const network = new NetworkBuilder(2);
    network.sourceBranch(0, 1, 10_000, 0);
    network.resistor(1, 0, 30_000);
    expect(gainAt(network, 1, 1000)).toBeCloseTo(0.75, 12);
  });

  test("an RC low-pass is 3.0103 dB down at 1/(2πRC)", () => {
    const network = new NetworkBuilder(2);
    network.sourceBranch(0, 1, 10_000, 0);
    network.capacitor(1, 0, 22e-9);
    expect(20 * Math.log10(gainAt(network, 1, 1 / (2 * Math.PI * 10_000 * 22e-9)))).toBeCloseTo(-3.0103, 4);
  });

  test("a series resonance stands at Q = √(L/C)/R at 1/(2π√(LC))", () => {
    const [R, L, C] = [6000, 2.4, 600e-12];
    const resonanceHz = 1 / (2 * Math.PI * Math.sqrt(L * C));
    expect(gainAt(seriesResonance(R, L, C), 1, resonanceHz)).toBeCloseTo(Math.sqrt(L / C) / R, 9);
  });

  // A first-year electrical engineering problem, "Analysis of an electric guitar pickup circuit" (EGB120), forward direction.
  test("5350 Ω, 4.5 H and 319 pF have a gain of 1.651 at 2640 Hz", () => {
    expect(gainAt(seriesResonance(5350, 4.5, 319e-12), 1, 2640)).toBeCloseTo(1.651, 3);
  });

  // C. E. LaForest, Characterizing Magnetic Guitar Pickups: 0.1 H resonating at 100 kHz with 25.33 pF and 210 Ω has Q 299.2.
  test("0.1 H, 210 Ω and 25.33 pF have a Q of 299.2 at resonance", () => {
    const C = 25.33e-12;
    const resonanceHz = 1 / (2 * Math.PI * Math.sqrt(0.1 * C));
    expect(resonanceHz).toBeCloseTo(100_000, -1);
    expect(gainAt(seriesResonance(210, 0.1, C), 1, resonanceHz)).toBeCloseTo(299.2, 1);
  });

  // Usenet, "Taper of Potentiometers"; the exact value x²/(1 + x(1 − x)), recomputed: −13.979 dB at x = 0.5, −6.49 at 0.75.
  test.each([
    [0.5, -13.979],
    [0.75, -6.49],
    [0.25, -25.575],
  ])("two equal linear pots in cascade at rotation %f give %f dB", (x, expected) => {
    const network = new NetworkBuilder(4);
    const [top, first, out] = [1, 2, 3];
    network.sourceBranch(0, top, 1e-3, 0);
    network.resistor(top, first, (1 - x) * 250_000);
    network.resistor(first, 0, x * 250_000);
    network.resistor(first, out, (1 - x) * 250_000);
    network.resistor(out, 0, x * 250_000);
    expect(20 * Math.log10(gainAt(network, out, 1000))).toBeCloseTo(expected, 2);
  });

  test("coupled coils in series aiding have L1 + L2 + 2k√(L1·L2), opposing L1 + L2 − 2k√(L1·L2)", () => {
    const [L1, L2, k] = [2, 3, 0.2];
    const mutual = k * Math.sqrt(L1 * L2);
    for (const sign of [1, -1]) {
      const network = new NetworkBuilder(3);
      const first = network.sourceBranch(0, 1, 1000, L1);
      const second = sign === 1 ? network.branch(1, 2, 1000, L2) : network.branch(2, 1, 1000, L2);
      network.mutual(first, second, mutual);
      network.resistor(2, 0, 100_000);
      const henries = L1 + L2 + 2 * sign * mutual;
      const expected = 100_000 / Math.hypot(102_000, 2 * Math.PI * 2000 * henries);
      expect(gainAt(network, 2, 2000)).toBeCloseTo(expected, 10);
    }
  });
});

describe("direct current", () => {
  const bridge = new NetworkBuilder(6);
  bridge.resistor(0, 1, 1000);
  bridge.branch(1, 2, 5000, 2.4);
  bridge.capacitor(2, 3, 22e-9);
  bridge.resistor(2, 0, 250_000);
  bridge.resistor(4, 5, 0);
  const dc = new DirectCurrent(bridge.build());

  test("a meter sees the network's resistance, a coil as its wire and a joint as 0 Ω", () => {
    expect(dc.resistanceBetween(1, 2)).toBeCloseTo(1 / (1 / 5000 + 1 / 251_000), 9);
    expect(dc.resistanceBetween(0, 2)).toBeCloseTo(1 / (1 / 6000 + 1 / 250_000), 9);
    expect(dc.resistanceBetween(4, 5)).toBe(0);
  });

  test("a capacitor and a part that hangs apart read open", () => {
    expect(dc.resistanceBetween(2, 3)).toBeNull();
    expect(dc.resistanceBetween(0, 4)).toBeNull();
  });
});
