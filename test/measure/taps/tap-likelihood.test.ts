import { describe, expect, it } from "vitest";
import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { foretoldTaps } from "../../../src/measure/taps/foretold-taps.ts";
import type { HeardTap } from "../../../src/measure/taps/hear-taps.ts";
import { tapChance, tapLogLikelihood } from "../../../src/measure/taps/tap-likelihood.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";
import { effort } from "../../effort.ts";
import { heardOf } from "./tap-trials.ts";

const { build } = scenarioBuilds.find(({ name }) => name === "which-treble-bleed")!;

const worth = (guard: typeof build, heard: ReturnType<typeof heardOf>) =>
  tapLogLikelihood(
    heard,
    foretoldTaps(
      guard,
      heard.map(({ step }) => step),
    ),
  );

describe("how likely taps are", () => {
  const heard = heardOf(build, build, { seed: 21 });
  const faults = singleFaults(build).map(({ kind, edits, lugs }) => ({ kind, lugs, guard: editBuild(build, edits) }));

  it("is best for the guard that was tapped, or as good for one that sounds alike", () => {
    const drawn = worth(build, heard);
    // Hands and leaks may prefer another by a little; by more than this none.
    expect(Math.max(...faults.map(({ guard }) => worth(guard, heard)))).toBeLessThan(drawn + 2);
  });

  it.each((["leads-swapped", "coil-open"] as const).slice(0, effort(1, 2)))(
    "is far better for a guard with its own fault: %s",
    (kind) => {
      const { guard } = faults.find((each) => each.kind === kind)!;
      const taps = heardOf(build, guard, { seed: 22 });
      expect(worth(guard, taps)).toBeGreaterThan(worth(build, taps) + 5);
    },
  );

  it("does not depend on the take's gain nor on which way up all of it is", () => {
    const other = heard.map((each) => ({
      ...each,
      sign: each.sign === 1 ? (-1 as const) : (1 as const),
      floor: each.floor - 12,
      ...(each.level === undefined ? {} : { level: each.level - 12 }),
    }));
    expect(worth(build, other)).toBeCloseTo(worth(build, heard), 6);
  });

  it("bears one group under a wrong label", () => {
    const moved = heard.with(0, { ...heard[1]!, step: heard[0]!.step });
    expect(worth(build, heard) - worth(build, moved)).toBeLessThan(15);
  });

  it("comes to 1 over all that one step may be heard as", () => {
    const [first] = heard;
    const step = { ...first!, floor: -300 };
    const { level: _, ...nothing } = step;
    const chance = (tap: HeardTap) => tapChance(tap, { re: 1, im: 0, leak: 0.01 }, { gain: 0, rows: new Map() }, 1);
    // Where a group of another row lies, it lies anywhere in 60 dB.
    const levels = Array.from({ length: 600 }, (_, i) => -30 + i / 10);
    const heardAs = ([1, -1] as const).flatMap((sign) => levels.map((level) => chance({ ...step, level, sign }) / 10));
    expect(chance(nothing) + heardAs.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 3);
  });
});
