import { expect, it } from "vitest";
import { Controls } from "../../../src/build-file/settings.ts";
import {
  MAX_AUDIO_CHANNELS,
  MAX_AUDIO_SECONDS,
  MAX_SAMPLE_RATE_HZ,
  MAX_TAP_SECONDS,
  MAX_TAP_STEPS,
} from "../../../src/limits.ts";
import { howToTap } from "../../../src/measure/taps/how-to-tap.ts";
import { planTaps, STEP_SECONDS, tapPlan } from "../../../src/measure/taps/plan-taps.ts";
import { settingWords } from "../../../src/measure/taps/tap-words.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";

const planOf = (scenario: string) => {
  const { build } = scenarioBuilds.find(({ name }) => name === scenario)!;
  return { build, steps: planTaps(build) };
};

it("taps every row in every position, from the neck to the bridge, but one that sounds before all others", () => {
  const { steps } = planOf("which-treble-bleed");
  expect(steps).toHaveLength(15);
  expect(steps.slice(0, 6).map(({ pickup }) => pickup)).toEqual([
    "bridge",
    "neck",
    "middle",
    "neck",
    "middle",
    "bridge",
  ]);
  expect(steps.slice(0, 3).map(({ sounds }) => sounds)).toEqual([true, false, false]);
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

it("has room for so many steps in one take, and says how many are left out", () => {
  const { build } = planOf("which-treble-bleed");
  const lever = Object.entries(build.parts).find(([, part]) => part.kind === "switch")!;
  const positions = Array.from({ length: 20 }, () => [["A0", "A1"]]);
  const many = { ...build, parts: { ...build.parts, [lever[0]]: { kind: "switch" as const, positions } }, wires: [] };
  expect(planTaps(many)).toHaveLength(50);
  expect(tapPlan(many).leftOut).toBe(10);
  expect(howToTap(planTaps(many), 10).at(-1)).toContain("no room for 10 more steps");
});

it("fits into one take at 48 kHz however many settings its steps lie in", () => {
  const { steps } = planOf("which-treble-bleed");
  const moved = steps.findIndex(({ settings }) => settings !== steps[0]!.settings);
  const perStep = steps[moved]!.at - steps[moved - 1]!.at;
  const lead = 5;
  expect(lead + MAX_TAP_STEPS * perStep).toBeLessThan(MAX_TAP_SECONDS);
  expect(MAX_TAP_SECONDS * 48_000).toBeLessThan(MAX_AUDIO_SECONDS * MAX_AUDIO_CHANNELS * MAX_SAMPLE_RATE_HZ);
});
