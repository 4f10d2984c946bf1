import { spawnSync } from "node:child_process";
import { resolve } from "node:path";
import { expect, it } from "vitest";
import { roomBetween, roomWithin } from "../../../src/bench/room/geometry/clearance.ts";
import type { Outline, Point } from "../../../src/bench/room/geometry/outline.ts";
import { isConvex } from "../../../src/bench/room/geometry/overlap.ts";
import { crossingOf } from "../../../src/bench/room/geometry/polygon.ts";
import { effort } from "../../effort.ts";
import { describeWith } from "../../tools.ts";

const PAIRS = 200;
/** Pairs whose deepest point Shapely looks for too, a hundredth of a millimetre at a time. */
const DEEP = effort(6, 60);
/** Metres: what is promised of distances. */
const PROMISED = 1e-5;

/** Numbers from 0 to 1 that are the same in every run (Park and Miller's generator). */
function randomNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 0x7fff_ffff;
    return state / 0x7fff_ffff;
  };
}

const random = randomNumbers(20_240_117);
const between = (low: number, high: number) => low + (high - low) * random();

/** A star-shaped line about a middle: convex where its radii are all the same, else mostly not. Metres. */
function around([x, y]: Point, radius: number, unevenness: number): Outline {
  const count = 3 + Math.floor(random() * 14);
  return Array.from({ length: count }, (_, index) => {
    const angle = (2 * Math.PI * (index + between(0.1, 0.9))) / count;
    const far = radius * (1 - unevenness * random());
    return [x + far * Math.cos(angle), y + far * Math.sin(angle)];
  });
}

/** A part and a cavity near each other: within, across its wall and outside. */
function pair(index: number): { readonly part: Outline; readonly cavity: Outline } {
  const cavity = around([0, 0], between(0.03, 0.09), index % 3 === 0 ? 0 : 0.6);
  const middle: Point = [between(-0.05, 0.05), between(-0.05, 0.05)];
  return { part: around(middle, between(0.004, 0.02), index % 2 === 0 ? 0 : 0.5), cavity };
}

const pairs = Array.from({ length: PAIRS }, (_, index) => pair(index));
const millimetres = (outline: Outline) => outline.map(([x, y]) => [x * 1000, y * 1000]);

interface Told {
  readonly simple: boolean;
  readonly within: boolean;
  readonly overlap: boolean;
  readonly lines: number;
  readonly distance: number;
  readonly out?: number;
  readonly wood?: number;
  readonly apart?: number;
}

function shapely(): Told[] {
  const cases = pairs.map(({ part, cavity }, index) => ({
    a: millimetres(part),
    b: millimetres(cavity),
    deep: index < DEEP,
    convex: isConvex(part) && isConvex(cavity),
  }));
  const input = JSON.stringify(cases);
  const { stdout, stderr } = spawnSync("/usr/bin/python3", [resolve("test/bench/room/shapely_distances.py")], {
    input,
  });
  if (stdout.length === 0) throw new Error(stderr.toString());
  return JSON.parse(stdout.toString());
}

describeWith("shapely", `${PAIRS} random parts and cavities against Shapely`, () => {
  const told = shapely();
  const each = (check: (told: Told, part: Outline, cavity: Outline) => void) =>
    told.forEach((answer, index) => {
      check(answer, pairs[index]!.part, pairs[index]!.cavity);
    });

  it("are of every sort: convex and not, within, across and outside", () => {
    const counts = [
      pairs.filter(({ part, cavity }) => isConvex(part) && isConvex(cavity)).length,
      pairs.filter(({ cavity }) => !isConvex(cavity)).length,
      told.filter(({ within }) => within).length,
      told.filter(({ within, overlap }) => overlap && !within).length,
      told.filter(({ overlap }) => !overlap).length,
      told.filter(({ apart }) => apart !== undefined).length,
    ];
    expect(Math.min(...counts)).toBeGreaterThanOrEqual(15);
  });

  it("lie within or not, with the same room to the wall, to a hundredth of a millimetre", () => {
    each(({ within, lines }, part, cavity) => {
      const { clearance } = roomWithin(part, cavity);
      expect(clearance >= 0).toBe(within);
      if (within) expect(Math.abs(clearance - lines / 1000)).toBeLessThan(PROMISED);
    });
  });

  it("reach as deep into the wood, to a hundredth of a millimetre", () => {
    const deep = told.filter(({ out }) => out !== undefined);
    expect(deep.length).toBeGreaterThan(DEEP / 4);
    each(({ out, wood }, part, cavity) => {
      if (out === undefined || wood === undefined) return;
      expect(Math.abs(roomWithin(part, cavity).clearance + Math.max(out, wood) / 1000)).toBeLessThan(PROMISED);
    });
  });

  it("are as far apart, and where both are convex have to be moved apart as far", () => {
    each(({ overlap, distance, apart }, part, cavity) => {
      const { clearance } = roomBetween(part, cavity);
      expect(clearance < 0).toBe(overlap);
      if (!overlap) expect(Math.abs(clearance - distance / 1000)).toBeLessThan(PROMISED);
      if (apart !== undefined) expect(Math.abs(clearance + apart / 1000)).toBeLessThan(PROMISED);
    });
  });

  it("cross themselves nowhere", () => {
    each(({ simple }, part, cavity) => {
      expect(simple).toBe(true);
      expect([crossingOf(part), crossingOf(cavity)]).toEqual([undefined, undefined]);
    });
  });
});
