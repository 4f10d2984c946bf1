import { describe, expect, test } from "vitest";
import { Controls, parseSettings, type RawSettings } from "../../../src/build-file/settings.ts";
import { ResponseEngine } from "../../../src/response/engine.ts";
import { humLevelDb } from "../../../src/response/hum.ts";
import { activeControls } from "../../../src/response/labels/activity.ts";
import {
  buildOf,
  type Changes,
  type Guard,
  REVERSED,
  single,
  threeSingles,
  twoHumbuckers,
} from "../../bench/audit/guards.ts";

function hum(guard: Guard, raw: RawSettings, changes: Changes = {}): number {
  const build = buildOf(guard, changes);
  return humLevelDb(new ResponseEngine(build).transfersIn(parseSettings(new Controls(build), raw)));
}

function active(guard: Guard, raw: RawSettings, changes: Changes = {}): readonly string[] {
  const build = buildOf(guard, changes);
  return activeControls(build, parseSettings(new Controls(build), raw));
}

/** 6 kΩ into 250 kΩ and 1 MΩ in parallel, by the divider rule. */
const LOADED_COIL_DB = 20 * Math.log10(200 / 206);
/** 3 kΩ into the same with a tone branch beside it: 250 kΩ less 145j kΩ (22 nF at 50 Hz) conducts 2.99 µS, 125 kΩ in all. */
const LOADED_PAIR_DB = 20 * Math.log10(125 / 128);

describe("net hum at the jack", () => {
  test("one reference coil alone hums at 0 dB less its load", () => {
    expect(hum(threeSingles, { lever: 1 })).toBeCloseTo(LOADED_COIL_DB, 1);
  });

  test("a reverse-wound neighbour of equal turns silences hum in parallel, and equal winding keeps one coil's hum", () => {
    expect(hum(threeSingles, { lever: 2 })).toBeLessThan(-200);
    const alike = { change: { middle: single({ distance: "0.1m" }) } };
    expect(hum(threeSingles, { lever: 2 }, alike)).toBeCloseTo(LOADED_PAIR_DB, 1);
  });

  test("a cancelling pair of unequal resistance leaves what the parallel divider says", () => {
    const middle = single({ distance: "0.1m", resistance: "7k", ...REVERSED });
    // Open-circuit: (7 − 6) / (7 + 6) of one coil, the reactance at 50 Hz being far below the resistance.
    const expected = 20 * Math.log10(1 / 13);
    expect(Math.abs(hum(threeSingles, { lever: 2 }, { change: { middle } }) - expected)).toBeLessThan(0.5);
  });

  test("turns go with the root of inductance: a series pair with 21 % more inductance in one coil leaves a tenth", () => {
    const guard: Guard = {
      parts: {
        a: single(),
        b: single({ inductance: 2.4 * 1.21, ...REVERSED }),
        jack: { kind: "jack" },
      },
      wires: [
        ["a.hot", "jack.tip"],
        ["a.ground", "b.hot"],
        ["b.ground", "jack.sleeve"],
      ],
    };
    expect(hum(guard, {})).toBeCloseTo(-20 - 20 * Math.log10(1.012), 1);
  });

  test("where nothing sounds, hum is at the floor", () => {
    expect(hum(threeSingles, { lever: 3 }, { remove: [["middle.hot", "lever.A2"]] })).toBe(-300);
  });
});

describe("the controls that do anything", () => {
  test.each([
    [1, ["volume", "lever"]],
    [2, ["volume", "tone2", "lever"]],
    [3, ["volume", "tone2", "lever"]],
    [4, ["volume", "tone1", "tone2", "lever"]],
    [5, ["volume", "tone1", "lever"]],
  ])("neck and middle tones on the lever's second pole, position %i", (lever, expected) => {
    expect(active(threeSingles, { lever })).toEqual(expected);
    expect(active(threeSingles, { lever, tone: 0 })).toEqual(expected);
  });

  test("a volume counts only where its pickup is heard", () => {
    expect(active(twoHumbuckers, { toggle: 1 })).toEqual(["volumeB", "tone", "toggle"]);
    expect(active(twoHumbuckers, { toggle: 2 })).toEqual(["volumeB", "volumeN", "tone", "toggle"]);
  });
});
