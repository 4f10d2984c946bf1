import { describe, expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Pickup } from "../../../src/build-file/schema.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { expandSweep } from "../../../src/build-file/sweep.ts";
import { compare } from "../../../src/choice/compare/compare.ts";
import { exchanged } from "../../../src/choice/exchange/exchanges.ts";
import { heardChanges } from "../../../src/choice/exchange/heard-change.ts";
import { Guard } from "../../../src/choice/guard.ts";
import { type DrawerInput, drawerSchema, type OwnedPart } from "../../../src/drawer/drawer-schema.ts";
import { piecesOf } from "../../../src/drawer/pieces.ts";
import { driveOf } from "../buildable/drive.ts";
import { pickupPart } from "../buildable/heaps.ts";

const BUILD = readBuild({
  presolder: 1,
  plan: {
    layout: "toggle-3-one-volume",
    pickups: { neck: "single-vintage", bridge: "single-vintage" },
    volume: "250k",
    tones: [{ pot: "250k", cap: "22n" }],
  },
});

function changesWith(input: DrawerInput) {
  const drawer = drawerSchema.parse(input);
  return heardChanges(BUILD, piecesOf(drawer, 3), drawer, { driveOf });
}

const part = (input: object) => drawerSchema.parse({ items: [{ part: input as never }] }).items[0]!.part as OwnedPart;

describe("the cheapest change that is heard", () => {
  const found = changesWith({
    items: [
      { part: { kind: "cap", capacitance: "47n" }, count: 0, price: 2 },
      { part: { kind: "cap", capacitance: "22n" }, count: 1, measured: ["21.8n"] },
      { part: { kind: "cap", capacitance: "4.7n" }, count: 1 },
      { part: { kind: "pot", resistance: "500k", taper: "audio" }, count: 0, price: 9 },
      { part: pickupPart("single-hot"), count: 0, price: 60 },
      { part: pickupPart("humbucker-medium"), count: 1 },
    ],
  });

  test("leaves out what nobody hears, and comes first where it lies there", () => {
    expect(found.heard.map(({ cost }) => cost)).toEqual([0, 2, 9, 9, 60, 60]);
    const sizes = found.heard.map(({ weighed }) => Math.abs(weighed.largest.difference));
    expect(sizes[2]).toBeGreaterThanOrEqual(sizes[3]!);
    expect(sizes[4]).toBeGreaterThanOrEqual(sizes[5]!);
    expect(found.heard.every(({ audible }) => audible !== "none" && audible !== "edge")).toBe(true);
    expect(found.heard[0]).toMatchObject({ to: { kind: "cap", capacitance: 4.7e-9 }, source: { item: 2 } });
    expect(found.unheard + found.heard.length).toBe(found.tried);
  });

  test("counts only what its lugs allow: no humbucker in a single coil's place", () => {
    // Three caps for one, a pot for two, a single coil for two.
    expect(found.possible).toBe(3 + 2 + 2);
  });

  test("is heard most where a sweep over every position and dial finds it, in the same figures", () => {
    const [first] = found.heard;
    const controls = new Controls(BUILD);
    const sweep = { toggle: [1, 2, 3], tone: [10, 0] };
    const settings = [...expandSweep(controls, sweep), ...expandSweep(controls, undefined, { volume: 5 })];
    const sides = [BUILD, first!.build].map((build) => {
      const guard = new Guard(build);
      return { guard, drive: driveOf(guard), settings };
    });
    const sizes = compare(sides[0]!, sides[1]!, null).rows.map(({ weighed }) => Math.abs(weighed.largest.difference));
    expect(Math.abs(first!.weighed.largest.difference)).toBe(Math.max(...sizes));
    expect(first!.settings.tone).toBe(0);
  });

  test("an effort that is spent is told", () => {
    const drawer = drawerSchema.parse({
      items: [{ part: { kind: "cap", capacitance: "47n" }, count: 2, measured: ["46n", "49n"] }],
    });
    expect(heardChanges(BUILD, piecesOf(drawer, 3), drawer, { driveOf, most: 1 })).toMatchObject({
      tried: 1,
      possible: 2,
    });
  });
});

describe("a part in another's place", () => {
  test("keeps the pot's own switch and place", () => {
    const pushPull = readBuild({ ...BUILD, parts: { ...BUILD.parts, tone: { ...BUILD.parts.tone, drives: "dpdt" } } });
    const pot = { kind: "pot", resistance: "500k", taper: "linear" };
    expect(exchanged(pushPull, "tone", part(pot))).toBeNull();
    const put = exchanged(pushPull, "tone", part({ ...pot, drives: "dpdt" }))!.parts.tone;
    expect(put).toMatchObject({ resistance: 500e3, taper: "linear", role: "tone", drives: { type: "dpdt" } });
  });

  test.each(["humbucker-medium", "mini-humbucker", "stacked-single"])(
    "of a %s like the one that sat there is the same guard, each coil where it was",
    (type) => {
      const guard = readBuild({
        presolder: 1,
        plan: { layout: "toggle-3-one-volume", pickups: { neck: type, bridge: type }, volume: "500k", tones: [] },
      });
      for (const name of ["neck", "bridge"]) {
        const put = exchanged(guard, name, part(pickupPart(type)))!;
        expect(put).toEqual(guard);
      }
    },
  );

  test("of a pickup with two coils of one's own has them side by side about the old one's middle", () => {
    const guard = readBuild({
      presolder: 1,
      plan: { layout: "one-pickup", pickups: { bridge: "humbucker-hot" }, volume: "500k", tones: [] },
    });
    const coil = { resistance: "4k", inductance: "2H" };
    const own = part({ kind: "pickup", coils: { a: coil, b: { ...coil, magnet: "south" } }, conductors: 4 });
    const distances = Object.values((exchanged(guard, "bridge", own)!.parts.bridge as Pickup).coils).map(
      ({ distance }) => distance!,
    );
    expect(distances[0]! - distances[1]!).toBeCloseTo(0.018, 9);
    const old = Object.values((guard.parts.bridge as Pickup).coils).map(({ distance }) => distance!);
    expect(distances[0]! + distances[1]!).toBeCloseTo(old[0]! + old[1]!, 9);
  });

  test("of a pickup of one's own carries the wires, and the place it sits in", () => {
    const own = part({ kind: "pickup", coils: { only: { resistance: "7k", inductance: "3H" } } });
    const put = exchanged(BUILD, "bridge", own)!;
    const old = BUILD.parts.bridge!;
    expect(put.parts.bridge).toMatchObject({ coils: { only: { resistance: 7e3 } }, place: old.place });
    expect(put.wires.length).toBe(BUILD.wires.length);
  });
});
