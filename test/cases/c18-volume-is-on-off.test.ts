import { describe, expect, test } from "vitest";
import { partsOfKind } from "../../src/build-file/parts-of-kind.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { wiperFraction } from "../../src/build-file/taper.ts";
import { levelAt, longForm } from "./bench-guard.ts";
import { ohmsBetween } from "./measured.ts";

/** A pot on a source of next to no resistance, with next to no load: its taper and nothing else. */
function unloaded(pot: object) {
  const build = longForm(
    {
      pickup: { kind: "pickup", coils: { coil: { resistance: "1m", inductance: 1e-9 } } },
      volume: { kind: "pot", role: "volume", resistance: "500k", ...pot },
      jack: { kind: "jack" },
    },
    [
      ["pickup.hot", "volume.3"],
      ["pickup.ground", "jack.sleeve"],
      ["volume.1", "jack.sleeve"],
      ["volume.2", "jack.tip"],
    ],
  );
  build.load = { resistance: 1e12, capacitance: 0 };
  delete build.cable;
  return build;
}

describe("level at dial 5, unloaded", () => {
  test.each([
    ["linear", { taper: "linear" }, -6.0],
    ["audio, 35 % at half rotation", { taper: "audio", midpoint: 0.35 }, -9.1],
    ["audio, 30 %", { taper: "audio", midpoint: 0.3 }, -10.5],
    ["audio, 20 %", { taper: "audio", midpoint: 0.2 }, -14.0],
    ["audio, 10 %", { taper: "audio", midpoint: 0.1 }, -20.0],
    [
      "a table through 10 %",
      {
        taper: [
          [0, 0],
          [0.5, 0.1],
          [1, 1],
        ],
      },
      -20.0,
    ],
  ])("%s: %s", (_, pot, decibels) => {
    expect(levelAt(unloaded(pot), 100, { volume: 5 })).toBeCloseTo(decibels, 1);
  });
});

describe("what a meter reads at half turn, from the wiper to the outer lugs", () => {
  const halves = (pot: object) => {
    const build = unloaded(pot);
    const lifted = { ...build, wires: build.wires.filter(({ from }) => from !== "pickup.hot") };
    return ["volume.1", "volume.3"].map((lug) => ohmsBetween(lifted, lug, "volume.2", { volume: 5 })! / 1000);
  };
  const close = (found: number[], wanted: number[]) => {
    for (const [i, kilohms] of wanted.entries()) expect(found[i]).toBeCloseTo(kilohms, 6);
  };

  test("500 kΩ linear: 250 and 250 kΩ", () => close(halves({ taper: "linear" }), [250, 250]));
  test("500 kΩ audio of 10 %: 50 and 450 kΩ", () => close(halves({ taper: "audio", midpoint: 0.1 }), [50, 450]));
  test("25 kΩ linear: 12.5 kΩ", () => close(halves({ taper: "linear", resistance: "25k" }), [12.5, 12.5]));
  test("19 kΩ to the top lug of 25 kΩ is a taper of 24 %", () =>
    close(halves({ taper: "audio", resistance: "25k", midpoint: (25 - 19) / 25 }), [6, 19]));
  test("a measured track replaces the nominal one and keeps the taper", () =>
    close(halves({ taper: "audio", midpoint: 0.2, measured: "470k" }), [94, 376]));
});

describe("tapers", () => {
  const pot = (spec: object) => {
    const build = readBuild({
      presolder: 1,
      parts: {
        pickup: { kind: "pickup", coils: { coil: { resistance: "6k", inductance: "2.4H" } } },
        pot: { kind: "pot", resistance: "250k", ...spec },
        jack: { kind: "jack" },
      },
      wires: [],
    });
    return partsOfKind(build, "pot")[0]![1];
  };

  test("audio is not one curve: the half-turn figure can be entered, and is 15 % where it is not", () => {
    expect(wiperFraction(pot({ taper: "audio" }), 5)).toBe(0.15);
    expect(wiperFraction(pot({ taper: "audio", midpoint: 0.24 }), 5)).toBe(0.24);
  });

  test("reverse audio mirrors audio", () => {
    for (const dial of [0, 1, 2.5, 5, 7, 9.9, 10])
      expect(wiperFraction(pot({ taper: "reverse-audio" }), dial)).toBeCloseTo(
        1 - wiperFraction(pot({ taper: "audio" }), 10 - dial),
        12,
      );
  });

  test.each([{ taper: "linear" }, { taper: "audio" }, { taper: "reverse-audio" }, { taper: "audio", midpoint: 0.07 }])(
    "%j rises from 0 to 1 and never turns back",
    (spec) => {
      const fractions = Array.from({ length: 101 }, (_, i) => wiperFraction(pot(spec), i / 10));
      expect(fractions[0]).toBe(0);
      expect(fractions[100]).toBe(1);
      for (let i = 1; i <= 100; i++) expect(fractions[i]).toBeGreaterThanOrEqual(fractions[i - 1]!);
    },
  );
});
