import { describe, expect, it } from "vitest";
import { meterReadings } from "../../src/bench/meter/readings.ts";
import { type Checkpoint, NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { NOTHING } from "../../src/examine/departures/departure.ts";
import { departuresOf } from "../../src/examine/departures/departures.ts";
import { affordableDepartures } from "../../src/examine/effort.ts";
import { examine } from "../../src/examine/examine.ts";
import { planNotes, planOf, USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { classesOf, priorOf } from "../../src/examine/weigh/classes.ts";
import { weighingOf } from "../../src/examine/weigh/evidence-of.ts";
import { MeterReadings } from "../../src/examine/weigh/meter-readings.ts";
import { MAX_TAKES } from "../../src/limits.ts";
import { hugeBuild } from "../bench/huge-build.ts";
import { thoroughly } from "../effort.ts";
import { seeded } from "./simulated-guard.ts";
import { trialGuards } from "./trial-guards.ts";
import { takesOf } from "./trials.ts";

const { build } = trialGuards.find(({ name }) => name === "one P90")!;

describe("an examination can be stopped", () => {
  const departures = departuresOf(build);
  const takes = takesOf(build, [], seeded(1), [planOf(build).takes[0]!.settings]);
  const { weigher } = weighingOf(build, { takes, rig: USUAL_RIG });
  const beliefs = { prior: priorOf(departures, undefined), readings: () => 0 };
  const stages: Record<string, (checkpoint: Checkpoint) => unknown> = {
    "listing departures": (checkpoint) => departuresOf(build, checkpoint),
    "planning takes": (checkpoint) => planOf(build, checkpoint),
    "joining what looks alike": (checkpoint) => classesOf(weigher, [NOTHING, ...departures], beliefs, checkpoint),
  };

  it.each(Object.entries(stages))("while %s, and not only before it", (_, stage) => {
    let calls = 0;
    const stop = () => {
      if (++calls === 3) throw new Error("stopped");
    };
    expect(() => stage({ checkpoint: stop })).toThrow("stopped");
  });
});

it("asks a meter's readings about no more departures than it can in some seconds", () => {
  const readings = meterReadings(build).readings.map(({ between, settings, ohms }) => ({ between, settings, ohms }));
  const { most } = new MeterReadings(build, { readings });
  const departures = departuresOf(build);
  expect(most).toBeGreaterThan(departures.length);
  expect(most).toBeLessThan(Number.POSITIVE_INFINITY);
  const all = Array.from({ length: 1000 }, () => departures[0]!);
  expect(affordableDepartures(build, all, 1, 77)).toHaveLength(77);
  expect(new MeterReadings(build, { readings: [] }).most).toBe(Number.POSITIVE_INFINITY);
});

it("counts what it takes to make a guard, and not its settings alone", () => {
  const huge = hugeBuild();
  const [first] = departuresOf(build);
  const many = Array.from({ length: 10_000 }, () => first!);
  const [one, four] = [1, 4].map((takes) => affordableDepartures(huge, many, takes).length) as [number, number];
  // Of a guard of a hundred parts, 6.5 ms to make it and 1.6 ms for each setting.
  expect(one * (6.5 + 1.6)).toBeLessThan(10_000);
  expect(four / one).toBeCloseTo(5 / 8, 2);
});

thoroughly("examines a guard as large as the door lets in, and says what it left out", async () => {
  const huge = hugeBuild();
  const { takes: planned } = planOf(huge);
  const settings = planned.map((each) => each.settings);
  expect(planned).toHaveLength(MAX_TAKES);
  expect(planNotes(planOf(build))).toEqual([]);
  const question = { rig: USUAL_RIG, takes: takesOf(huge, [], seeded(1), settings), readings: [] };
  const notes = examine(huge, question, NO_CHECKPOINT).notes.join();
  expect(notes).toContain(`The plan ends at ${MAX_TAKES} takes`);
  expect(notes).toMatch(/The guard is large: of \d+ departures the \d+ commonest were weighed/);
});
