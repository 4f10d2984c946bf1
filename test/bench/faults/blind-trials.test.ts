import { describe, expect, it } from "vitest";
import type { Fault } from "../../../src/bench/faults/fault.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { effort, thoroughly } from "../../effort.ts";
import { scenarioBuilds } from "../scenario-builds.ts";
import { faultTrials, type Random, seeded, soundTrials, valueTrials } from "./blind-trials.ts";

const FAULTS_A_SCENARIO = effort(2, 8);
const SOUND_A_SCENARIO = effort(1, 6);

function drawn(faults: readonly Fault[], count: number, random: Random): Fault[] {
  const left = [...faults];
  return Array.from({ length: Math.min(count, left.length) }, () => {
    const [fault] = left.splice(Math.floor(random() * left.length), 1);
    return fault!;
  });
}

// A draw of what test/benchmarks/diagnosis-trials.bench.ts runs in full: readings with 1 % of noise, parts anywhere in tolerance.
describe("blind trials on every scenario", () => {
  it("name the true fault, or one that reads the same, first in 95 % and among three in 99 %", () => {
    const random = seeded(20);
    const counts = scenarioBuilds.map(({ build }) =>
      faultTrials(build, drawn(singleFaults(build), FAULTS_A_SCENARIO, random), random),
    );
    const sum = (of: (count: (typeof counts)[number]) => number) =>
      counts.reduce((total, count) => total + of(count), 0);
    const trials = sum((count) => count.trials);
    expect(trials).toBe(scenarioBuilds.length * FAULTS_A_SCENARIO);
    expect(
      sum((count) => count.first) / trials,
      counts.flatMap((count) => count.missed).join("\n"),
    ).toBeGreaterThanOrEqual(0.95);
    expect(sum((count) => count.firstThree) / trials).toBeGreaterThanOrEqual(0.99);
  });

  thoroughly("name a part of half its value first in 95 % of those that a meter can see", () => {
    const random = seeded(22);
    const counts = scenarioBuilds.map(({ build }) => valueTrials(build, [0.5], random));
    const trials = counts.reduce((total, count) => total + count.trials, 0);
    const first = counts.reduce((total, count) => total + count.first, 0);
    expect(trials).toBeGreaterThan(2 * scenarioBuilds.length);
    expect(first / trials, counts.flatMap((count) => count.missed).join("\n")).toBeGreaterThanOrEqual(0.95);
  });

  it("find nothing wrong with a sound guard in 99 %", () => {
    const random = seeded(21);
    const sound = scenarioBuilds.map(({ build }) => soundTrials(build, SOUND_A_SCENARIO, random));
    const trials = scenarioBuilds.length * SOUND_A_SCENARIO;
    expect(sound.reduce((total, count) => total + count, 0) / trials).toBeGreaterThanOrEqual(0.99);
  });
});
