import { describe, expect, it } from "vitest";
import { planFor } from "../../src/examine/plan/plan.ts";
import { EXAMINE_CAUTIONS, plannedTake } from "../../src/examine/plan/planned-words.ts";
import { MAX_TAKES } from "../../src/limits.ts";
import { trialGuards } from "./trial-guards.ts";

const guard = (name: string) => trialGuards.find((each) => each.name === name)!.build;

describe("the takes to make", () => {
  it("are every position, each push-pull up, and each knob at 0 and 5 where it acts", () => {
    const build = guard("two humbuckers, push-pull splits");
    const titles = planFor(build).map((each) => plannedTake(build, each).title);
    expect(titles).toEqual([
      "toggle in position 1",
      "toggle in position 2",
      "toggle in position 3",
      "toggle in position 1, tone pulled up",
      "toggle in position 1, volume at 0",
      "toggle in position 1, volume at 5",
      "toggle in position 1, tone at 0",
      "toggle in position 1, tone at 5",
    ]);
  });

  it("turn a knob in a position in which it does something", () => {
    const build = guard("two-volumes");
    const volumes = planFor(build).filter(({ moved }) => moved.some(({ control }) => control.startsWith("volume")));
    expect(new Set(volumes.map(({ settings }) => settings.switches.toggle)).size).toBe(2);
  });

  it.each(trialGuards)("$name: are no more than may be sent, all different, and told as sentences", ({ build }) => {
    const takes = planFor(build).map((each) => plannedTake(build, each));
    expect(takes.length).toBeGreaterThan(2);
    expect(takes.length).toBeLessThanOrEqual(MAX_TAKES);
    expect(new Set(takes.map(({ settings }) => JSON.stringify(settings))).size).toBe(takes.length);
    for (const { instruction } of takes) expect(instruction).toMatch(/^Play the sweep .*\.$/);
  });
});

it.each(["phantom power", "amplifier", "iron", "fumes", "eye", "lead", "low volume"])("cautions of %s", (danger) => {
  expect(EXAMINE_CAUTIONS.join(" ")).toContain(danger);
});
