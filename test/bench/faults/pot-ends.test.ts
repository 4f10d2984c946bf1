import { describe, expect, it } from "vitest";
import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { onePickup } from "../../fixtures/circuits.ts";

const build = readBuild(onePickup());
const between = ["jack.tip", "jack.sleeve"] as const;

const firstWith = (ohms: number) => {
  const readings = [
    { between, ohms: 5865 },
    { between, settings: { volume: 0 }, ohms },
    { between, sweep: "volume", ohms: 64_000 },
  ];
  const [first] = diagnose(build, { readings }).explanations;
  return [first!, ...first!.sameAs].map(({ faults }) => faults[0]!);
};

describe("what a volume of 250 kΩ reads at 0", () => {
  // Data sheets allow 1 % of the track, and the track 20 %: 2.5 kΩ, or 3 kΩ of one at the end of its tolerance.
  it.each([0.4, 1.2, 30, 400, 2400])("of %s Ω is what data sheets allow, and nothing is wrong", (ohms) => {
    expect(firstWith(ohms)[0]!.kind).toBe("none");
  });

  it.each([5000, 7500, 20_000])("of %s Ω is an end that leaks, or a poor joint there, of so much", (ohms) => {
    const faults = firstWith(ohms);
    const leaks = faults.find(({ kind }) => kind === "pot-end-leaks")!;
    expect(faults.map(({ kind }) => kind)).not.toContain("none");
    // The coil and the rest of the track are beside it: 6 + 250 kΩ, or so.
    expect(leaks.ohms! / ((ohms * 256e3) / (256e3 - ohms))).toBeCloseTo(1, 1);
  });
});
