import { expect, it } from "vitest";
import { planTaps, type TapStep } from "../../../src/measure/taps/plan-taps.ts";
import { startOf } from "../../../src/measure/taps/tap-start.ts";
import { seeded } from "../../bench/faults/blind-trials.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";

/** Groups where a hand that strays by half a second tapped the rows that were heard. */
function groupsOf(steps: readonly TapStep[], start: number, seed: number) {
  const random = seeded(seed);
  return steps.map(({ at }) => {
    const from = start + at + random() - 0.5;
    return { from, to: from + 1.5, swings: [] };
  });
}

it.each(scenarioBuilds)("finds when the plan began on $name, its silent rows leaving nothing behind", ({ build }) => {
  const steps = planTaps(build);
  const heard = groupsOf(
    steps.filter(({ sounds }) => sounds),
    7,
    3,
  );
  expect(Math.abs(startOf(heard, steps) - 7)).toBeLessThan(0.5);
});

it("finds it where the row that was to sound first is dead", () => {
  const { build } = scenarioBuilds.find(({ name }) => name === "which-treble-bleed")!;
  const steps = planTaps(build);
  const first = steps[0]!.pickup;
  const heard = groupsOf(
    steps.filter(({ sounds, pickup }) => sounds && pickup !== first),
    4,
    5,
  );
  expect(Math.abs(startOf(heard, steps) - 4)).toBeLessThan(1);
});
