import { describe, expect, it } from "vitest";
import { bestTurns } from "../../../src/bench/turns/best-turns.ts";
import { clockOf } from "../../../src/bench/turns/clock.ts";
import { WireLengths } from "../../../src/bench/turns/wire-lengths.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";

const TURNS = Array.from({ length: 24 }, (_, step) => step * 15);

function turnsOf(build: Build): Map<string, number> {
  const now = Object.entries(build.parts).map(([name, { place }]) => [name, place?.turn ?? 0] as const);
  return new Map([...now, ...bestTurns(build).map(({ part, turn }) => [part, turn] as const)]);
}

const before = (build: Build) =>
  new Map(Object.entries(build.parts).map(([name, { place }]) => [name, place?.turn ?? 0]));

const pot = (x: number, y: number, role = "volume", turn = 0) => ({
  kind: "pot",
  role,
  resistance: "250k",
  place: { x, y, turn },
});
// Its tip lug lies 14 mm to the bass side of its middle.
const jack = { kind: "jack", place: { x: 0, y: 0.014 } };
const guard = (parts: object, wires: unknown[]) => readBuild({ presolder: 1, parts: { jack, ...parts }, wires });

describe("the best turns", () => {
  it.each(PLAN_PRESETS)(
    "of $id make the wires together no longer, and no pot turned otherwise makes them shorter",
    ({ plan }) => {
      const build = readBuild({ presolder: 1, plan });
      const lengths = new WireLengths(build);
      const turns = turnsOf(build);
      const least = lengths.total(turns);
      expect(least).toBeLessThanOrEqual(lengths.total(before(build)) + 1e-12);
      const pots = Object.entries(build.parts).filter(([, { kind }]) => kind === "pot");
      // Two millimetres are not worth a turn.
      for (const [name] of pots)
        for (const turn of TURNS)
          expect(lengths.total(new Map(turns).set(name, turn)), `${name} ${turn}`).toBeGreaterThan(least - 0.0021);
    },
  );

  it("of a guard with two pots are as short as any of all 576, less what is not worth a turn", () => {
    const build = guard({ volume: pot(0.1, 0.02), tone: pot(0.13, -0.03, "tone", 90) }, [
      ["volume.2", "jack.tip"],
      ["tone.2", "volume.3"],
      ["tone.3", "jack.sleeve"],
    ]);
    const lengths = new WireLengths(build);
    const every = TURNS.flatMap((volume) =>
      TURNS.map((tone) => lengths.total(new Map(Object.entries({ jack: 0, volume, tone })))),
    );
    expect(lengths.total(turnsOf(build)) - Math.min(...every)).toBeLessThan(0.004);
  });

  it("turn a pot's lugs to where its wires go, and say so by the clock", () => {
    const [turn, ...others] = bestTurns(guard({ volume: pot(0.1, 0) }, [["volume.2", "jack.tip"]]));
    expect(others).toEqual([]);
    // The jack lies towards the bridge: left as seen from the back.
    expect(turn).toMatchObject({ part: "volume", turn: 270, clock: "9 o'clock" });
    expect(turn!.metresSaved).toBeGreaterThan(0.01);
    expect(turn!.why).toMatch(/^Its wires go to the jack: turned so, they are \d+ mm shorter\.$/);
  });

  it("say nothing where a pot is well as it is", () => {
    const build = guard({ volume: pot(0.1, 0) }, [["volume.2", "jack.tip"]]);
    const [best] = bestTurns(build);
    const turned = guard({ volume: pot(0.1, 0, "volume", best!.turn) }, [["volume.2", "jack.tip"]]);
    expect(bestTurns(turned)).toEqual([]);
  });

  it("let two tones that share a cap face each other", () => {
    const build = guard(
      { low: pot(0, 0.1, "tone"), high: pot(0.06, 0.1, "tone"), cap: { kind: "cap", capacitance: "22n" } },
      [
        ["low.2", "cap.a"],
        ["cap.a", "high.2"],
        ["cap.b", "jack.sleeve"],
      ],
    );
    const lengths = new WireLengths(build);
    const turns = turnsOf(build);
    expect(lengths.isFacing("low", "high", turns)).toBe(true);
    expect(lengths.isFacing("high", "low", turns)).toBe(true);
    for (const { why } of bestTurns(build)) expect(why).toContain("with which it shares a leg");
  });
});

it("the clock runs clockwise, turns counter-clockwise, and lugs that are not turned point to six", () => {
  expect([0, 90, 180, 270, 345, 60, 15].map(clockOf)).toEqual([
    "6 o'clock",
    "3 o'clock",
    "12 o'clock",
    "9 o'clock",
    "half past 6",
    "4 o'clock",
    "half past 5",
  ]);
});
