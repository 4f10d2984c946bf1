import { describe, expect, it } from "vitest";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { hearTaps } from "../../../src/measure/taps/hear-taps.ts";
import { planTaps } from "../../../src/measure/taps/plan-taps.ts";
import { tapMap } from "../../../src/measure/taps/tap-map.ts";
import type { TapTiming } from "../../../src/measure/taps/tap-windows.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";
import { casesOf, effort } from "../../effort.ts";
import { START_SECONDS, TRIAL_RATE_HZ } from "./tap-trials.ts";
import { type Hand, tappedTake } from "./tapped-guard.ts";

const BUILD = scenarioBuilds.find(({ name }) => name === "tone-before-or-after-volume")!.build;
const STEPS = planTaps(BUILD);
const BY_PLAN: TapTiming = { by: "plan", start: START_SECONDS };

/** Both pickups in the position that lets both through. */
const SOUNDING = STEPS.slice(2, 4).map((step, i) => ({ ...step, at: 4 * i }));
const BY_FIRST: TapTiming = { by: "plan" };

const takeOf = (hand: Partial<Hand> = {}) => tappedTake(BUILD, STEPS, { rateHz: TRIAL_RATE_HZ, seed: 11, ...hand });
const hear = (samples: Float32Array, timing: TapTiming = BY_PLAN) =>
  hearTaps({ path: "taps", sampleRateHz: TRIAL_RATE_HZ, channels: [samples] }, STEPS, timing, NO_CHECKPOINT);
const heardIn = (samples: Float32Array, timing?: TapTiming) =>
  tapMap(BUILD, hear(samples, timing)).departures.map(({ message }) => message);

const TAKE = takeOf();
const HEARD = hear(TAKE);

describe("taps are heard", () => {
  it.each(
    casesOf(
      [
        ["50 Hz that wanders", { mainsHz: 50.08, hum: 0.02 }],
        ["60 Hz", { mainsHz: 59.95, hum: 0.02 }],
        ["no hum at all, and hiss", { hum: 0, noise: 1e-3 }],
      ] as const,
      2,
    ),
  )("through %s", (_, hand) => {
    expect(heardIn(takeOf(hand))).toEqual([]);
  });

  it.each([44_100, 48_000].slice(0, effort(1, 2)))("at an interface's own %d Hz", (rateHz) => {
    const take = tappedTake(BUILD, SOUNDING, { rateHz, seed: 5 });
    const heard = hearTaps({ path: "taps", sampleRateHz: rateHz, channels: [take] }, SOUNDING, BY_FIRST, NO_CHECKPOINT);
    expect(heard.every(({ level, certainty }) => level! > -40 && certainty > 0.95)).toBe(true);
  });

  it("whichever way the magnets, the tool or the plug turn all of it", () => {
    const down = hear(TAKE.map((each) => -each));
    const sure = HEARD.flatMap(({ level, certainty, sign }, i) =>
      level! > -40 && certainty > 0.9 ? [sign * down[i]!.sign] : [],
    );
    expect(sure.length).toBeGreaterThan(3);
    expect(new Set(sure)).toEqual(new Set([-1]));
  });

  it("where a row is tapped twice, or four times", () => {
    expect(heardIn(takeOf({ tapsOn: (step) => 2 + 2 * (step % 2) }))).toEqual([]);
  });

  it("and those that an input clipped are told", () => {
    const clipped = hear(TAKE.map((each) => Math.max(-1, Math.min(1, 4 * each))));
    expect(clipped.some(({ isClipped }) => isClipped)).toBe(true);
    expect(HEARD.some(({ isClipped }) => isClipped)).toBe(false);
  });

  it("and a lever's clicks are none", () => {
    const silent = takeOf({ peak: 1e-7, hum: 1e-3, touchHum: 0, clicks: 0.3 });
    expect(hear(silent).every(({ level }) => level === undefined)).toBe(true);
    expect(heardIn(silent)).toEqual([
      "The bridge is silent in every position.",
      "The neck is silent in every position.",
    ]);
  });
});

describe("which row was tapped is told", () => {
  it("by pauses where every row is heard", () => {
    const take = tappedTake(BUILD, SOUNDING, { rateHz: TRIAL_RATE_HZ, seed: 3 });
    const recording = { path: "taps", sampleRateHz: TRIAL_RATE_HZ, channels: [take] };
    expect(hearTaps(recording, SOUNDING, { by: "pauses" }, NO_CHECKPOINT).every(({ level }) => level! > -40)).toBe(
      true,
    );
  });

  it("not by pauses where some are silent: the groups that were found are named with their seconds, and what to do", () => {
    const quiet = takeOf({ touchHum: 0, hum: 0.01, noise: 1e-3 });
    expect(() => hear(quiet, { by: "pauses" })).toThrow(
      /^taps: \d groups of taps were found, at \d+\.\d s .*; the plan has 6 steps\. .*`times`/,
    );
  });

  it("by the plan's times from the first tap on", () => {
    expect(heardIn(takeOf({ late: () => 0 }), BY_FIRST)).toEqual([]);
  });

  it("by hand", () => {
    const times = STEPS.map(({ at }) => START_SECONDS + at + 0.3);
    expect(heardIn(TAKE, { by: "hand", times })).toEqual([]);
    const without = times.map((each, i) => (i === 2 ? null : each));
    expect(hear(TAKE, { by: "hand", times: without })[2]!.level).toBeUndefined();
  });

  it("not where taps go on over the time of the next", () => {
    const steps = STEPS.map((step) => ({ ...step, at: step.at * 0.6 }));
    const recording = {
      path: "taps",
      sampleRateHz: TRIAL_RATE_HZ,
      channels: [takeOf({ tapsOn: () => 5, late: () => 0.6 })],
    };
    expect(() => hearTaps(recording, steps, BY_PLAN, NO_CHECKPOINT)).toThrow(
      /no pause where step \d+ begins; tap in time/,
    );
  });

  it("of silence nothing, and what to do is said", () => {
    expect(() => hear(new Float32Array(TRIAL_RATE_HZ * 5))).toThrow(/^taps: is silent.*turn its gain up/);
  });
});
