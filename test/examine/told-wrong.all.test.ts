import { describe, expect, it } from "vitest";
import { meterReadings } from "../../src/bench/meter/readings.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { examine } from "../../src/examine/examine.ts";
import { USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { seeded } from "./simulated-guard.ts";
import { takesOf } from "./trials.ts";

const BUILD = readBuild({
  presolder: 1,
  plan: {
    layout: "lever-3-two-pickups",
    pickups: { neck: "single-vintage", bridge: "humbucker-medium" },
    volume: "250k",
    tones: [{ pot: "250k", cap: "22n" }],
  },
});

const settingsOf = (build: Build, all: readonly Record<string, number>[]) =>
  all.map((raw) => parseSettings(new Controls(build), raw));
const POSITIONS = settingsOf(BUILD, [{ lever: 1 }, { lever: 2 }, { lever: 3 }]);
const WITH_KNOBS = [
  ...POSITIONS,
  ...settingsOf(BUILD, [
    { lever: 1, tone: 0 },
    { lever: 1, volume: 5 },
  ]),
];

describe("what was told of the takes", () => {
  it("names a known resistor that is another one, and which", () => {
    const takes = takesOf(BUILD, [], seeded(21), WITH_KNOBS, 10 / 47);
    const { verdict, departures, summary, title, next } = examine(
      BUILD,
      { rig: USUAL_RIG, takes, readings: [] },
      NO_CHECKPOINT,
    );
    expect(verdict, summary).toBe("departs");
    const [fault] = departures[0]!.faults;
    expect(fault!.kind).toBe("known-resistor");
    expect(Math.abs(Math.log(fault!.ohms! / 10e3))).toBeLessThan(0.06);
    expect(title).toMatch(/^Known resistor other than told, about (9|10)/);
    expect(next).toContain("Measure the known resistor");
  });

  it("names two positions that have changed their numbers", () => {
    const [one, two, three] = takesOf(BUILD, [], seeded(22), POSITIONS) as [
      ReturnType<typeof takesOf>[number],
      ...ReturnType<typeof takesOf>,
    ];
    const told = [one, { ...two!, settings: three!.settings }, { ...three!, settings: two!.settings }];
    const { departures, summary } = examine(BUILD, { rig: USUAL_RIG, takes: told, readings: [] }, NO_CHECKPOINT);
    expect(departures[0]!.title, summary).toBe("Positions 2 and 3 exchanged");
  });
});

describe("a meter beside the takes", () => {
  const takes = takesOf(BUILD, [], seeded(23), POSITIONS);
  const standing = meterReadings(BUILD).readings.find(
    ({ between, settings }) => between.join() === "jack.tip,jack.sleeve" && settings.lever === 1,
  )!;
  const asked = (factor: number) => {
    const readings = [{ between: standing.between, settings: standing.settings, ohms: standing.ohms! * factor }];
    return examine(BUILD, { rig: USUAL_RIG, takes, readings }, NO_CHECKPOINT);
  };

  it("is told which reading contradicts which take, and what the takes would make it read", () => {
    const { verdict, title, readings, contradictions, next, departures } = asked(0.55);
    expect([verdict, title]).toEqual(["unexplained", "Takes and meter contradict each other"]);
    expect(departures[0]!.fit).toBeLessThan(1e-3);
    const [{ agrees, foretold, against, message }] = readings as [(typeof readings)[number]];
    expect(agrees).toBe(false);
    // The drawing's own parts lie within their twentieth.
    expect(Math.abs(Math.log(foretold! / standing.ohms!))).toBeLessThan(0.08);
    expect(against).toEqual([expect.stringContaining("position 1")]);
    expect(contradictions).toEqual([message]);
    expect(message).toMatch(
      /shows [\d.]+ kΩ, where these takes would make it [\d.]+ kΩ: it contradicts the take with position 1/,
    );
    expect(next).toMatch(/^Short the meter's probes/);
  });

  it("agrees where it reads what the takes would make it read, and leaves the verdict as it is", () => {
    const { verdict, readings, contradictions, departures } = asked(1);
    expect([verdict, contradictions]).toEqual(["as-drawn", []]);
    expect(readings.map(({ agrees }) => agrees)).toEqual([true]);
    // What no take shows is told by sort, each with what would show it.
    const { sorts, sameAs } = departures[0]!;
    expect(sameAs.length).toBeLessThanOrEqual(8);
    expect(sorts.reduce((sum, { count }) => sum + count, 0)).toBeGreaterThan(sameAs.length);
    expect(sorts.every(({ shownBy }) => shownBy?.endsWith("."))).toBe(true);
    expect(sorts.map(({ shownBy }) => shownBy)).toContainEqual(expect.stringMatching(/^The take with .* shows/));
  });
});
