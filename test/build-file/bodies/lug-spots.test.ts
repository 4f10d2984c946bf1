import { describe, expect, it } from "vitest";
import { bodiesOf, shaftBodiesOf } from "../../../src/build-file/bodies/bodies-of.ts";
import { lugPlaces } from "../../../src/build-file/bodies/lug-places.ts";
import { lugSpots } from "../../../src/build-file/bodies/lug-spots.ts";
import { apart } from "../../../src/build-file/bodies/spot.ts";
import { lugsOfPart } from "../../../src/build-file/lugs.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Part } from "../../../src/build-file/schema.ts";
import { NAMED_SWITCH_TYPES } from "../../../src/build-file/switch-types.ts";

const JACK = { kind: "jack" };

function read(part: object): Part {
  return readBuild({ presolder: 1, parts: { jack: JACK, it: part }, wires: [] }).parts.it!;
}

const coil = { resistance: "6k", inductance: "2.5H" };

/** A part of every type, as a build file has it. */
const TYPES: readonly (readonly [string, object])[] = [
  ...NAMED_SWITCH_TYPES.map((type) => [type, { kind: "switch", type }] as const),
  ...[1, 2, 4, 8].flatMap((poles) =>
    [2, 5, 12].map(
      (throws) => [`rotary ${poles}P${throws}T`, { kind: "switch", type: "rotary", poles, throws }] as const,
    ),
  ),
  ["own contacts", { kind: "switch", positions: [[["A0", "A1"]], [["x", "y", "A0"]]] }],
  ["pot", { kind: "pot", resistance: "250k" }],
  ["two tracks", { kind: "pot", resistance: "250k", gangs: [{ resistance: "500k" }] }],
  ...NAMED_SWITCH_TYPES.map((drives) => [`pot on ${drives}`, { kind: "pot", resistance: "250k", drives }] as const),
  ["two tracks, dpdt", { kind: "pot", resistance: "250k", gangs: [{ resistance: "500k" }], drives: "dpdt" }],
  ["cap", { kind: "cap", capacitance: "22n" }],
  ["resistor", { kind: "resistor", resistance: "150k" }],
  ["claw", { kind: "terminal", role: "claw" }],
  ["one coil", { kind: "pickup", coils: { coil } }],
  ["two coils", { kind: "pickup", coils: { slug: coil, screw: coil } }],
  ["two coils joined", { kind: "pickup", coils: { slug: coil, screw: coil }, conductors: 2 }],
];

/** The part in every body that it can have, those of the switch on its shaft included. */
function inEveryBody(part: object): { title: string; part: Part }[] {
  const plain = read(part);
  const bodies = bodiesOf(plain).map(({ name }) => ({ title: name, part: read({ ...part, body: name }) }));
  const type = (part as { drives?: string }).drives;
  const shafts = shaftBodiesOf(plain).map(({ name }) => ({
    title: `shaft ${name}`,
    part: read({ ...part, drives: { type, body: name } }),
  }));
  return [{ title: "no body said", part: plain }, ...bodies, ...shafts];
}

const BODIES = TYPES.flatMap(([type, part]) =>
  inEveryBody(part).map(({ title, part: each }) => ({ title: `${type}, ${title}`, part: each })),
);

describe("where lugs sit", () => {
  it.each(BODIES)("each lug of a part has one spot and no other has any: $title", ({ part }) => {
    const locals = lugsOfPart("it", part).map(({ local }) => local);
    expect([...lugSpots(part).keys()].sort()).toEqual([...locals].sort());
  });

  it.each(BODIES)("no two lugs are nearer than 3 mm: $title", ({ part }) => {
    const spots = [...lugSpots(part)];
    const near = spots.flatMap(([a, at], index) =>
      spots.slice(index + 1).flatMap(([b, other]) => (apart(at, other) < 0.003 - 1e-9 ? [`${a} ${b}`] : [])),
    );
    expect(near).toEqual([]);
  });

  it("the usual body is the first", () => {
    for (const [, part] of TYPES) {
      const [usual] = bodiesOf(read(part));
      if (usual) expect(lugSpots(read({ ...part, body: usual.name }))).toEqual(lugSpots(read(part)));
    }
  });

  it.each(["lever-3", "lever-5"] as const)("the commons of an open-frame %s lie diagonally", (type) => {
    const spots = lugSpots(read({ kind: "switch", type, body: "open-frame" }));
    const [a, b] = [spots.get("A0")!, spots.get("B0")!];
    const xs = [...spots.values()].map(({ x }) => x);
    expect([a.x, b.x].sort((p, q) => p - q)).toEqual([Math.min(...xs), Math.max(...xs)]);
    expect(Math.sign(a.y)).toBe(-Math.sign(b.y));
    // The way between them is the longest there is.
    const ways = [...spots.values()].flatMap((p) => [...spots.values()].map((q) => apart(p, q)));
    expect(apart(a, b)).toBeCloseTo(Math.max(...ways), 9);
  });

  it.each(["lever-3", "lever-5"] as const)("the neck's throw of an open-frame %s is nearer the bridge", (type) => {
    const spots = lugSpots(read({ kind: "switch", type }));
    for (const pole of ["A", "B"]) expect(spots.get(`${pole}3`)!.x).toBeLessThan(spots.get(`${pole}1`)!.x);
  });

  it("the two orders in line are what they are called", () => {
    const order = (body: string) =>
      [...lugSpots(read({ kind: "switch", type: "lever-5", body }))]
        .sort(([, a], [, b]) => a.x - b.x)
        .map(([lug]) => lug);
    expect(order("in-line-mirrored")).toEqual(["A0", "A1", "A2", "A3", "B3", "B2", "B1", "B0"]);
    expect(order("in-line-alike")).toEqual(["A0", "A1", "A2", "A3", "B0", "B1", "B2", "B3"]);
  });

  // Lug 1 at the counter-clockwise end, counted from the shaft: common practice, no source.
  it.each(["full-size", "mini"])("a %s pot reads 3, 2, 1 from the back, lugs down", (body) => {
    const spots = lugSpots(read({ kind: "pot", resistance: "250k", body }));
    const track = ["3", "2", "1"].map((lug) => spots.get(lug)!);
    expect(track[0]!.x).toBeLessThan(track[1]!.x);
    expect(track[1]!.x).toBeLessThan(track[2]!.x);
    for (const { y } of track) expect(y).toBeLessThan(0);
  });

  it("a push-pull's commons stand between their throws, all behind the pot's own lugs", () => {
    for (const body of ["columns", "rows"]) {
      const spots = lugSpots(read({ kind: "pot", resistance: "500k", drives: { type: "dpdt", body } }));
      for (const pole of ["A", "B"]) {
        const [one, common, two] = [1, 0, 2].map((lug) => spots.get(`s.${pole}${lug}`)!);
        expect(common!.x).toBeCloseTo((one!.x + two!.x) / 2, 9);
        expect(common!.y).toBeCloseTo((one!.y + two!.y) / 2, 9);
        for (const { y } of [one!, common!, two!]) expect(y).toBeGreaterThan(spots.get("2")!.y);
      }
    }
  });
});

describe("lugPlaces", () => {
  it("turns a part's lugs counter-clockwise as seen from the back, about its own middle", () => {
    const place = { x: 0.03, y: 0.075, turn: 90 };
    const build = readBuild({
      presolder: 1,
      parts: { jack: JACK, volume: { kind: "pot", resistance: "250k", place }, claw: { kind: "terminal" } },
      wires: [],
    });
    const middles = new Map(Object.entries({ volume: place, jack: { x: -0.09, y: 0.15 }, claw: { x: 0, y: -0.05 } }));
    const lugs = lugPlaces(build, middles);
    // Lugs that pointed to the bass side point to the neck.
    expect(lugs.get("volume.2")!.x).toBeCloseTo(0.03 + 0.016, 9);
    expect(lugs.get("volume.2")!.y).toBeCloseTo(0.075, 9);
    expect(lugs.get("volume.3")!.y).toBeLessThan(lugs.get("volume.1")!.y);
    expect(lugs.get("claw")).toEqual({ x: 0, y: -0.05 });
    expect(lugs.size).toBe(4 + 2 + 1);
  });
});
