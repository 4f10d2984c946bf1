import { expect, it } from "vitest";
import { Controls } from "../../../src/build-file/settings.ts";
import { planTaps, STEP_SECONDS } from "../../../src/measure/taps/plan-taps.ts";
import { settingWords } from "../../../src/measure/taps/tap-words.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";

const planOf = (scenario: string) => {
  const { build } = scenarioBuilds.find(({ name }) => name === scenario)!;
  return { build, steps: planTaps(build) };
};

it("taps every row in every position, from the neck to the bridge", () => {
  const { steps } = planOf("which-treble-bleed");
  expect(steps).toHaveLength(15);
  expect(steps.slice(0, 3).map(({ pickup }) => pickup)).toEqual(["neck", "middle", "bridge"]);
});

it("taps the second row of a pickup whose coils are joined inside only once", () => {
  const { build, steps } = planOf("spare-ground-wire");
  const rows = Object.values(build.parts).flatMap((part) => (part.kind === "pickup" ? Object.keys(part.coils) : []));
  expect(rows).toHaveLength(4);
  expect(steps).toHaveLength(3 * 2 + 2);
});

it("throws every other switch once, where that changes most", () => {
  const { build, steps } = planOf("hss-250k-or-500k");
  const { main } = new Controls(build);
  const thrown = steps.filter(({ settings }) => settings.switches["tone2.s"] === 2);
  expect(new Set(thrown.map(({ settings }) => settings.switches[main!.name]))).toEqual(new Set([1]));
  expect(settingWords(build, thrown[0]!.settings)).toBe("position 1, lower tone switch up");
});

it("leaves time for each row, and for a hand to move a lever", () => {
  const { steps } = planOf("which-treble-bleed");
  const gaps = steps.slice(1).map(({ at }, i) => at - steps[i]!.at);
  expect(Math.min(...gaps)).toBe(STEP_SECONDS);
  expect(gaps.filter((gap) => gap > STEP_SECONDS)).toHaveLength(4);
});
