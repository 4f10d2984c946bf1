import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings, rawSettings } from "../../src/build-file/settings.ts";
import { defaultSweep, expandSweep } from "../../src/build-file/sweep.ts";
import { MAX_SETTINGS } from "../../src/limits.ts";
import { LEVER_PLAN } from "../fixtures/plans.ts";
import { faultsFrom } from "./refusals.ts";

const guard = readBuild({
  presolder: 1,
  plan: { ...LEVER_PLAN, split: { pickup: "bridge", by: "tone2" } },
});
const controls = new Controls(guard);
const settingsWith = (raw: Record<string, number | string>) => parseSettings(controls, raw);

describe("one setting", () => {
  test("controls left out stand at 10, at position 1, and down", () => {
    expect(settingsWith({})).toEqual({
      dials: { volume: 10, tone1: 10, tone2: 10 },
      switches: { lever: 1, "tone2.s": 1 },
    });
  });

  test("a push-pull goes by words or by number, and dials by numbers in text", () => {
    for (const up of ["up", 2, "2"]) expect(settingsWith({ "tone2.s": up }).switches["tone2.s"]).toBe(2);
    expect(settingsWith({ tone1: "7.5" }).dials).toEqual({ volume: 10, tone1: 7.5, tone2: 10 });
  });

  test("a role moves every pot that has it, and a pot named on its own overrides the role in any order", () => {
    expect(settingsWith({ tone: 4 }).dials).toEqual({ volume: 10, tone1: 4, tone2: 4 });
    expect(settingsWith({ tone2: 9, tone: 4 }).dials).toEqual({ volume: 10, tone1: 4, tone2: 9 });
    expect(settingsWith({ tone: 4, tone2: 9 }).dials).toEqual({ volume: 10, tone1: 4, tone2: 9 });
  });

  test("written out and read again it is the same", () => {
    const settings = settingsWith({ lever: 3, volume: 2, tone1: 0, "tone2.s": "up" });
    const raw = rawSettings(controls, settings);
    expect(raw).toEqual({ lever: 3, "tone2.s": "up", volume: 2, tone1: 0, tone2: 10 });
    expect(settingsWith(raw)).toEqual(settings);
  });

  test.each<[Record<string, number | string>, string, RegExp]>([
    [{ lever: 6 }, "settings.lever", /"6" is no position of lever; expected 1 to 5/],
    [{ lever: 0 }, "settings.lever", /expected 1 to 5/],
    [{ lever: 2.5 }, "settings.lever", /expected 1 to 5/],
    [{ lever: "centre" }, "settings.lever", /expected 1 to 5/],
    [{ "tone2.s": "centre" }, "settings.tone2.s", /expected 1 to 2 or "down", "up"/],
    [{ volume: 11 }, "settings.volume", /expected a number from 0 to 10/],
    [{ volume: -1 }, "settings.volume", /expected a number from 0 to 10/],
    [{ volume: "loud" }, "settings.volume", /expected a number from 0 to 10/],
    [{ volume: "" }, "settings.volume", /expected a number from 0 to 10/],
    [{ volume: Number.NaN }, "settings.volume", /expected a number from 0 to 10/],
    [{ leaver: 1 }, "settings.leaver", /did you mean "lever"/],
    [{ constructor: 1 }, "settings.constructor", /there is no control or role/],
  ])("%j is refused", (raw, path, message) => {
    const faults = faultsFrom(() => settingsWith(raw));
    expect(faults).toEqual([{ path, message: expect.stringMatching(message) }]);
  });

  test("every control at fault is named", () => {
    const faults = faultsFrom(() => settingsWith({ lever: 9, volume: 12, tone1: 5 }));
    expect(faults.map((fault) => fault.path)).toEqual(["settings.lever", "settings.volume"]);
  });
});

describe("a sweep", () => {
  test("without anything asked is every position of the main switch by tone 0 to 10", () => {
    const dials = Array.from({ length: 11 }, (_, index) => index);
    expect(defaultSweep(controls)).toEqual({ lever: [1, 2, 3, 4, 5], tone: dials });
    const settings = expandSweep(controls);
    expect(settings).toHaveLength(55);
    expect(settings[0]).toEqual(settingsWith({ lever: 1, tone: 0 }));
    expect(settings[1]).toEqual(settingsWith({ lever: 1, tone: 1 }));
    expect(settings[54]).toEqual(settingsWith({ lever: 5, tone: 10 }));
  });

  test("varies its axes over the settings, the first slowest", () => {
    const settings = expandSweep(controls, { tone: [0, 10], lever: [2, 4] }, { volume: 7, tone1: 3 });
    expect(settings).toEqual([
      settingsWith({ volume: 7, tone: 0, lever: 2 }),
      settingsWith({ volume: 7, tone: 0, lever: 4 }),
      settingsWith({ volume: 7, tone: 10, lever: 2 }),
      settingsWith({ volume: 7, tone: 10, lever: 4 }),
    ]);
  });

  test("settings alone are that one setting", () => {
    expect(expandSweep(controls, undefined, { lever: 2 })).toEqual([settingsWith({ lever: 2 })]);
  });

  test("leaves out the axes that a build has not got", () => {
    const plain = readBuild({
      presolder: 1,
      plan: { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k" },
    });
    const bare = new Controls(plain);
    expect(defaultSweep(bare)).toEqual({});
    expect(expandSweep(bare)).toEqual([bare.atRest]);
  });

  test("names the value at fault", () => {
    const faults = faultsFrom(() => expandSweep(controls, { lever: [1, 7], tone: [0, 99] }));
    expect(faults.map((fault) => fault.path)).toEqual(["sweep.lever.1", "sweep.tone.1"]);
  });

  test("is bounded", () => {
    const many = Array.from({ length: MAX_SETTINGS / 5 + 1 }, (_, i) => (i * 10) / MAX_SETTINGS);
    const [fault] = faultsFrom(() => expandSweep(controls, { lever: [1, 2, 3, 4, 5], tone: many }));
    expect(fault!.message).toContain(`expected at most ${MAX_SETTINGS}`);
  });
});
