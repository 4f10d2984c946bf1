import { describe, expect, test } from "vitest";
import type { Build } from "../../src/build-file/schema.ts";
import { guardOf, jackOhms, levelAt, longForm } from "./bench-guard.ts";

// Readings worked by hand, all in parallel: 8 k, 7.5 k and two tracks of 500 k; 8 k and one or two of them; 6 k and 250 k by three.
// The values are common practice, no source.
const pickup = (resistance: string) => ({
  kind: "pickup",
  coils: { coil: { resistance, inductance: "4.5H", capacitance: "130p" } },
});

const pair = (independentVolumes: boolean) =>
  guardOf({
    layout: "toggle-3-two-volumes",
    pickups: { neck: pickup("7.5k"), bridge: pickup("8k") },
    volume: { pot: "500k", taper: "audio" },
    independentVolumes,
  });

const normal = pair(false);
const swapped = pair(true);
const MIDDLE = { toggle: 2 };
/** The plan draws the neck's volume first. */
const NECK_DOWN = { ...MIDDLE, volume1: 0 };
const BRIDGE_DOWN = { ...MIDDLE, volume2: 0 };

describe("pickups on the outer lugs", () => {
  test("both at 10 read 3.812 kΩ in the middle, the bridge alone 7.874 kΩ", () => {
    expect(jackOhms(normal, MIDDLE)! / 1000).toBeCloseTo(3.812, 3);
    expect(jackOhms(normal, { toggle: 1 })! / 1000).toBeCloseTo(7.874, 3);
  });

  test.each([NECK_DOWN, BRIDGE_DOWN])("%j shorts the jack and silences both", (settings) => {
    expect(jackOhms(normal, settings)).toBe(0);
    expect(levelAt(normal, 1000, settings)).toBeLessThan(-120);
  });
});

describe("pickups on the wipers", () => {
  test("the neck at 0 leaves the bridge at 7.752 kΩ and to be heard", () => {
    expect(jackOhms(swapped, NECK_DOWN)! / 1000).toBeCloseTo(7.752, 3);
    expect(levelAt(swapped, 400, NECK_DOWN) - levelAt(swapped, 400, { toggle: 1 })).toBeGreaterThan(-1);
  });

  test("a volume does little until the end of its travel, then drops", () => {
    const drop = (build: Build, from: number, to: number) =>
      levelAt(build, 100, { toggle: 1, volume2: from }) - levelAt(build, 100, { toggle: 1, volume2: to });
    for (const dial of [7, 5, 3, 2]) expect(drop(swapped, 10, dial)).toBeLessThan(drop(normal, 10, dial));
    expect(drop(normal, 10, 3)).toBeGreaterThan(20);
    expect(drop(swapped, 10, 3)).toBeLessThan(6);
    expect(drop(swapped, 3, 0)).toBeGreaterThan(100);
  });
});

test("three 6 kΩ pickups, always on, each on a 250 kΩ volume: 1.953 kΩ at 10, and a short with any one at 0", () => {
  const names = ["one", "two", "three"];
  const volume = { kind: "pot", role: "volume", resistance: "250k", taper: "audio" };
  const parts = Object.fromEntries(
    names.flatMap((name) => [
      [name, pickup("6k")],
      [`${name}Volume`, volume],
    ]),
  );
  const wires = names.flatMap((name) => [
    [`${name}.hot`, `${name}Volume.3`],
    [`${name}.ground`, "jack.sleeve"],
    [`${name}Volume.1`, "jack.sleeve"],
    [`${name}Volume.2`, "jack.tip"],
  ]);
  const guard = longForm({ ...parts, jack: { kind: "jack" } }, wires);
  expect(jackOhms(guard)! / 1000).toBeCloseTo(1.953, 3);
  for (const name of names) expect(jackOhms(guard, { [`${name}Volume`]: 0 })).toBe(0);
});
