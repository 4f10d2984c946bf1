import { describe, expect, it } from "vitest";
import { countFaults, createPrior, valueCounts } from "../../../../src/bench/faults/hypotheses/prior.ts";
import { singleFaults } from "../../../../src/bench/faults/kinds/single-faults.ts";
import { meterModelOf } from "../../../../src/bench/meter/meter-model.ts";
import { readBuild } from "../../../../src/build-file/read-build.ts";
import { onePickup } from "../../../fixtures/circuits.ts";

const build = readBuild(onePickup());
const faults = singleFaults(build);
const counts = countFaults(faults, {});
const common = { isComplainedOf: false } as const;

describe("how common faults are before anything is measured", () => {
  it.each([undefined, "new", "old"] as const)(
    "makes 1 of all that can be, two at once included: joints %s",
    (joints) => {
      const prior = createPrior(counts, { ...common, joints });
      let all = Math.exp(prior([]));
      for (const [index, first] of faults.entries()) {
        all += Math.exp(prior([first]));
        for (const second of faults.slice(index + 1)) all += Math.exp(prior([first, second]));
      }
      // A pair of a fault with itself is none: what is missing is its share of the second faults.
      expect(all).toBeGreaterThan(0.99);
      expect(all).toBeLessThanOrEqual(1);
    },
  );

  it("shares a kind evenly among the places where it can be", () => {
    const prior = createPrior(counts, common);
    const open = faults.filter(({ kind }) => kind === "wire-open");
    expect(new Set(open.map((each) => prior([each]))).size).toBe(1);
    const twice = createPrior({ ...counts, "wire-open": 2 * open.length }, common);
    expect(prior([open[0]!]) - twice([open[0]!])).toBeCloseTo(Math.LN2, 12);
  });

  it("counts each coil, track and resistor once among the parts of another value", () => {
    const { parameters } = meterModelOf(build, 20).parts;
    expect(valueCounts(parameters)).toEqual({ "coil-value": 1, "pot-value": 2, "resistor-value": 0 });
  });
});
