import { expect, it } from "vitest";
import { mainPositions } from "../../src/bench/main-positions.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { examine } from "../../src/examine/examine.ts";
import { USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { type Take, usedFrequencies } from "../../src/examine/takes/take.ts";
import { TONES_HZ } from "../../src/measure/signal/multitone.ts";
import { heardOf } from "./simulated-exciter.ts";
import { benchOf, normal, seeded, soldered } from "./simulated-guard.ts";
import { trialGuards } from "./trial-guards.ts";

const frequenciesHz = Float64Array.from(usedFrequencies(TONES_HZ), (index) => TONES_HZ[index]!);
const { build } = trialGuards.find(({ name }) => name === "three single coils, treble bleed")!;
const through = { pickup: "middle", coil: "coil" };
const POSITIONS = mainPositions(new Controls(build)).map(({ settings }) => settings);

/** An exciter that stays over the middle coil in every position, moved by a hair between takes, its field in the others too. */
it("leaves a sound guard as drawn by an exciter over one coil, its level and its far field off by some per cent", () => {
  const random = seeded(5);
  const guard = soldered(build, [], random);
  const bench = benchOf(47e3, random);
  const takes = POSITIONS.map((settings): Take => {
    const strength = 0.02 * Math.exp(0.03 * normal(random));
    const exciter = { strength, cornerHz: 3000, delaySeconds: 0, far: 0.05 };
    const heard = heardOf(guard, settings, through, exciter, frequenciesHz, bench, random);
    return { settings, through, hasReference: true, frequenciesHz, ...heard };
  });
  const { verdict, summary, takes: told } = examine(build, { rig: USUAL_RIG, takes, readings: [] }, NO_CHECKPOINT);
  expect(verdict, summary).toBe("as-drawn");
  expect(told.map(({ agrees }) => agrees)).toEqual(told.map(() => true));
});
