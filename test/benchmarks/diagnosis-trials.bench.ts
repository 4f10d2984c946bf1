import { expect, it } from "vitest";
import { singleFaults } from "../../src/bench/faults/kinds/single-faults.ts";
import { faultTrials, seeded, soundTrials } from "../bench/faults/blind-trials.ts";
import { scenarioBuilds } from "../bench/scenario-builds.ts";

const SOUND_A_SCENARIO = 200;

function percent(part: number, whole: number): string {
  return `${((100 * part) / whole).toFixed(2)} %`;
}

// Every single fault of every scenario, injected once in a guard of parts anywhere within tolerance; the finder gets the
// standing readings with 1 % of noise and nothing else.
it("blind trials: every single fault of every scenario", () => {
  const random = seeded(1);
  const all = { trials: 0, first: 0, firstThree: 0, sound: 0 };
  for (const { name, build } of scenarioBuilds) {
    const begun = performance.now();
    const { trials, first, firstThree } = faultTrials(build, singleFaults(build), random);
    const each = (performance.now() - begun) / trials;
    const sound = soundTrials(build, SOUND_A_SCENARIO, random);
    console.log(
      `${name}: ${trials} faults, first ${percent(first, trials)}, first three ${percent(firstThree, trials)}, ` +
        `sound ${percent(sound, SOUND_A_SCENARIO)}, ${each.toFixed(1)} ms a diagnosis`,
    );
    all.trials += trials;
    all.first += first;
    all.firstThree += firstThree;
    all.sound += sound;
  }
  const soundTotal = SOUND_A_SCENARIO * scenarioBuilds.length;
  console.log(
    `all: ${all.trials} faults, first ${percent(all.first, all.trials)}, first three ${percent(all.firstThree, all.trials)}, ` +
      `sound ${percent(all.sound, soundTotal)} of ${soundTotal}`,
  );
  expect(all.first / all.trials).toBeGreaterThanOrEqual(0.95);
  expect(all.firstThree / all.trials).toBeGreaterThanOrEqual(0.99);
  expect(all.sound / soundTotal).toBeGreaterThanOrEqual(0.99);
});
