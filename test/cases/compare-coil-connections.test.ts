import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { parseSettings } from "../../src/build-file/settings.ts";
import { featuresFor, Guard } from "../../src/choice/guard.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { level } from "./one-pickup.ts";

type Wires = [string, string][];
// A tenth of a usual resistance, so that the peak stands at the resonance 1/(2π√LC) itself and not a little under it.
const coil = () => ({ resistance: "700", inductance: "2.2H" });
const pickup = { kind: "pickup", conductors: 4, coils: { a: coil(), b: coil() } };
const SERIES: Wires = [
  ["pickup.a.finish", "volume.3"],
  ["pickup.a.start", "pickup.b.finish"],
  ["pickup.b.start", "volume.case"],
];
const PARALLEL: Wires = [
  ["pickup.a.finish", "volume.3"],
  ["pickup.b.finish", "volume.3"],
  ["pickup.a.start", "volume.case"],
  ["pickup.b.start", "volume.case"],
];
const SPLIT: Wires = [
  ["pickup.a.finish", "volume.3"],
  ["pickup.a.start", "volume.case"],
];

/** Two equal coils without coupling or winding capacitance on a 500 kΩ volume: nothing but cable tunes them. */
function guard(wires: Wires, load = "1M", volume = "500k"): Guard {
  return new Guard(
    withIdealPots(
      readBuild(
        onePickup({
          pickup,
          parts: {
            volume: { kind: "pot", role: "volume", resistance: volume },
            tone: { kind: "pot", role: "tone", resistance: "500k", noLoad: true },
          },
          wires: [...wires, ["volume.2", "jack.tip"], ["volume.1", "volume.case"], ["volume.case", "jack.sleeve"]],
          rest: { load: { resistance: load } },
        }),
      ),
    ),
  );
}

function peakHz(of: Guard): number {
  return featuresFor(of.transfers(parseSettings(of.controls, {}))).peak!.frequency;
}

describe("two equal coils", () => {
  it("in series give twice one coil's voltage, and in parallel one coil's: 6 dB apart", () => {
    const [series, parallel, split] = [SERIES, PARALLEL, SPLIT].map((wires) =>
      level(guard(wires, "1G", "100M"), {}, 50),
    );
    expect(series! - parallel!).toBeCloseTo(6.02, 1);
    // Equal coils in phase lose nothing by being in parallel.
    expect(parallel! - split!).toBeCloseTo(0, 2);
  });

  // H. E. W. Lemme, Pickup-Geheimnisse: Beschaltung: inductance to a quarter or a half, resonance to 2 or √2 times, for equal
  // coils without mutual inductance where the outside capacitance is far larger than the windings' own.
  it("have their resonance doubled by parallel instead of series, and raised √2 by splitting", () => {
    const [series, parallel, split] = [SERIES, PARALLEL, SPLIT].map((wires) => peakHz(guard(wires, "1G", "100M")));
    expect(parallel! / series!).toBeCloseTo(2, 2);
    expect(split! / series!).toBeCloseTo(Math.SQRT2, 2);
  });
});
