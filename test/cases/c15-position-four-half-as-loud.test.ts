import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { withIdealPots } from "../ideal-pots.ts";
import { readScenario } from "../scenarios/scenarios.ts";
import { jackOhms, levelAt } from "./bench-guard.ts";

// Two coils in series give twice one coil's voltage, in parallel that of one: 0 and −6.02 dB. 7 kΩ a coil is common practice, no
// source; the readings are parallel and series resistances worked by hand.
// The five sounds: bridge; inner coils in series; both; inner coils in parallel; neck. Equal coils of 7 kΩ, a 500 kΩ volume.
const guard = withIdealPots(readBuild(readScenario("five-sounds-two-humbuckers.json").build));
const BASS_HZ = 30;

/** The guard with pots and load so high that only the coils' own voltages count. */
function unloaded(): Build {
  const build = structuredClone(guard);
  for (const part of Object.values(build.parts)) if (part.kind === "pot") part.resistance = 1e8;
  build.load = { resistance: 1e12, capacitance: 0 };
  return build;
}

describe("levels of equal coils, relative to the bridge", () => {
  test.each([
    [1, 0],
    [2, 0],
    [3, 0],
    [4, -6.0],
    [5, 0],
  ])("position %d: %d dB", (lever, decibels) => {
    const relative = levelAt(unloaded(), BASS_HZ, { lever }) - levelAt(unloaded(), BASS_HZ, { lever: 1 });
    expect(Math.abs(relative - decibels)).toBeLessThan(0.05);
  });
});

describe("what the meter reads at the jack", () => {
  test.each([
    [1, 13.62],
    [2, 13.62],
    [3, 6.9],
    [4, 3.48],
  ])("position %d: %d kΩ", (lever, kilohms) => {
    expect(jackOhms(guard, { lever })! / 1000).toBeCloseTo(kilohms, 2);
  });

  test("one coil alone: 6.90 kΩ", () => {
    const split = withIdealPots(
      readBuild({
        presolder: 1,
        plan: {
          layout: "one-pickup",
          pickups: {
            bridge: {
              type: "humbucker-medium",
              coils: { slug: { resistance: "7k" }, screw: { resistance: "7k" } },
            },
          },
          volume: "500k",
          split: { pickup: "bridge", by: "volume" },
        },
      }),
    );
    expect(jackOhms(split)! / 1000).toBeCloseTo(13.62, 2);
    expect(jackOhms(split, { "volume.s": "up" })! / 1000).toBeCloseTo(6.9, 2);
  });
});

test("two equal pickups in parallel and in phase are as loud as one of them, not 25 to 50 % weaker", () => {
  const pair = withIdealPots(
    readBuild({
      presolder: 1,
      plan: {
        layout: "toggle-3-one-volume",
        pickups: { neck: "single-medium", bridge: "single-medium-rwrp" },
        volume: "250k",
      },
    }),
  );
  const [one, both] = [1, 2].map((toggle) => levelAt(pair, BASS_HZ, { toggle }));
  expect(both! - one!).toBeGreaterThan(0);
  expect(both! - one!).toBeLessThan(0.15);
});
