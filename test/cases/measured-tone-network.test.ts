import { describe, expect, test } from "vitest";
import { wiperFraction } from "../../src/build-file/taper.ts";
import { NetworkBuilder } from "../../src/network/elements.ts";
import { solveTransfers } from "../../src/network/nodal-analysis.ts";
import { assemblePencil } from "../../src/network/pencil.ts";
import { logSpaced } from "../../src/response/frequencies.ts";
import { magnitudeDb } from "../../src/response/level-and-phase.ts";

/**
 * The only passive network of resistors, caps and a pot found measured: a low-pass and a high-pass with the pot between them, its
 * wiper out. B. Holmes, M. van Walstijn, DAFx-19, Birmingham 2019, companion data, repository bholmesqub/DAFx19; values as fitted to their 42
 * curves, which plain nodal analysis with the measured tracks then gives to 0.34 dB rms.
 */
const NETWORK = { R1: 46e3, C1: 8.6e-9, R2: 21.2e3, C2: 4.8e-9, track: 98.14e3, load: 100e3 };
/** Percent of the track at dials 0 to 10: three audio pots and three linear ones of that source, their means. */
const MEASURED = {
  audio: [0, 0.7, 2.2, 6.8, 11.4, 16.0, 20.9, 44.7, 73.4, 98.8, 100],
  linear: [0, 7.2, 19.4, 30.4, 41.3, 51.9, 62.5, 73.2, 84.2, 96.6, 100],
};
const FREQUENCIES = logSpaced(20, 20_000, 60);

/** Level at the wiper, dB re the source. @param share of the track between the low-pass and the wiper */
function levels(share: number): Float64Array {
  const { R1, C1, R2, C2, track, load } = NETWORK;
  const network = new NetworkBuilder(2);
  const [source, low, high, wiper] = [1, network.node(), network.node(), network.node()];
  network.sourceBranch(0, source, 1e-3, 0);
  network.resistor(source, low, R1);
  network.capacitor(low, 0, C1);
  network.capacitor(source, high, C2);
  network.resistor(high, 0, R2);
  network.resistor(low, wiper, Math.max(1, share * track));
  network.resistor(wiper, high, Math.max(1, (1 - share) * track));
  network.resistor(wiper, 0, load);
  const [spectrum] = solveTransfers(assemblePencil(network.build()), wiper, FREQUENCIES);
  return magnitudeDb(spectrum!);
}

/** Root mean square over all dials and frequencies, dB. */
function apart(taper: "audio" | "linear", shareAt: (dial: number) => number): number {
  const squares = MEASURED[taper].flatMap((percent, dial) => {
    const [wanted, found] = [levels(percent / 100), levels(shareAt(dial))];
    return Array.from(wanted, (level, i) => (level - found[i]!) ** 2);
  });
  return Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / squares.length);
}

const usual = (taper: "audio" | "linear") => (dial: number) => wiperFraction({ taper, midpoint: undefined }, dial);

describe("a measured network of resistors, caps and a pot", () => {
  test.each([
    ["audio", 1],
    ["linear", 0.55],
  ] as const)("with the usual %s track differs from the measured tracks by less than %s dB rms", (taper, most) => {
    const rms = apart(taper, usual(taper));
    expect(rms).toBeLessThan(most);
    expect(rms).toBeGreaterThan(0.01);
  });

  test("shows that the check can fail: two straight lines through 15 % are further off", () => {
    const lines = (dial: number) => (dial <= 5 ? 0.03 * dial : 0.15 + 0.17 * (dial - 5));
    expect(apart("audio", lines)).toBeGreaterThan(1.1);
  });
});
