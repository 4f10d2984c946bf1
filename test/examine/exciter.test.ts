import { describe, expect, it } from "vitest";
import { singleFaults } from "../../src/bench/faults/kinds/single-faults.ts";
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
function answerTo(kind: string | undefined, seed: number) {
  const random = seeded(seed);
  const truth = singleFaults(build).find((fault) => fault.kind === kind && fault.lugs.includes("middle.hot"));
  const guard = soldered(build, truth?.edits ?? [], random);
  const bench = benchOf(47e3, random);
  const takes = POSITIONS.map((settings): Take => {
    const strength = 0.02 * Math.exp(0.025 * normal(random));
    const exciter = { strength, cornerHz: 3000, delaySeconds: 0, far: 0.02 };
    const heard = heardOf(guard, settings, through, exciter, frequenciesHz, bench, random);
    return { settings, through, hasReference: true, frequenciesHz, ...heard };
  });
  return examine(build, { rig: USUAL_RIG, takes, readings: [] }, NO_CHECKPOINT);
}

describe("an exciter over one coil, in every position", () => {
  it.each([1, 2])("leaves a sound guard as drawn, its level off by some per cent from take to take: %d", (seed) => {
    const { verdict, summary, takes } = answerTo(undefined, seed);
    expect(verdict, summary).toBe("as-drawn");
    expect(takes.map(({ agrees }) => agrees)).toEqual(takes.map(() => true));
  });

  it("still hears a coil that is broken", () => {
    const { departures, summary } = answerTo("coil-open", 3);
    const named = [departures[0]!, ...departures[0]!.sameAs].flatMap(({ faults }) => faults);
    expect(named, summary).toContainEqual(expect.objectContaining({ kind: "coil-open" }));
  });
});
