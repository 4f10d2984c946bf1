import { describe, expect, it } from "vitest";
import { CATALOGUE } from "../../src/build-file/catalogue.ts";
import { expandBuild } from "../../src/build-file/expand.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { arrangeParts, UNITS_PER_METRE } from "../../src/page/drawing/arrange.ts";
import { freePlace } from "../../src/page/drawing/hand/free-place.ts";
import { newFaults } from "../../src/page/drawing/hand/join-faults.ts";
import { lugTowards } from "../../src/page/drawing/hand/lug-keys.ts";
import { movedPart, turnedPart, type WrittenPlace } from "../../src/page/drawing/hand/place-edits.ts";
import { colouredWire } from "../../src/page/drawing/hand/wire-edits.ts";
import { seenLugs } from "../../src/page/drawing/laid-guard.ts";
import { seenFrom } from "../../src/page/drawing/view.ts";
import type { BuildSource } from "../../src/page/state/reading.ts";

const HSS = CATALOGUE.plans.find(({ id }) => id === "hss-push-pull-split")!.plan;
const source = expandBuild({ presolder: 1, title: "", plan: HSS }) as BuildSource;
const placedIn = (from: BuildSource) => arrangeParts(readBuild(from));
const partOf = (from: BuildSource, name: string) => placedIn(from).find((part) => part.name === name)!;
const placeOf = (from: BuildSource, name: string) => from.parts[name]!.place as WrittenPlace;

describe("a part that is moved or turned by hand", () => {
  it("is drawn where its place says, to the tenth of a millimetre, though others lie there", () => {
    for (const { name } of placedIn(source)) {
      const next = movedPart(source, partOf(source, name), { x: 31.7, y: -12.1 });
      const { x, y } = placeOf(next, name) as { x: number; y: number };
      const { centre } = partOf(next, name);
      expect(centre.x / UNITS_PER_METRE, name).toBeCloseTo(x, 9);
      expect(centre.y / UNITS_PER_METRE, name).toBeCloseTo(y, 9);
      expect(Math.abs(x * 1e4 - Math.round(x * 1e4)), name).toBeLessThan(1e-6);
    }
  });

  it("comes round after 24 steps, and its lugs with it", () => {
    const start = turnedPart(source, partOf(source, "volume"), 0);
    let next = start;
    for (let step = 0; step < 24; step++) next = turnedPart(next, partOf(next, "volume"), 1);
    expect(placeOf(next, "volume")).toEqual(placeOf(start, "volume"));
    expect(seenLugs(placedIn(next), "back")).toEqual(seenLugs(placedIn(start), "back"));
  });

  it("turns counter-clockwise as seen from the back, clockwise as seen from the front", () => {
    const next = turnedPart(source, partOf(source, "volume"), 6);
    const placed = placedIn(next);
    const { centre } = partOf(next, "volume");
    for (const [side, right] of [
      ["back", 1],
      ["front", -1],
    ] as const) {
      // Lugs that point down turn to the right by a quarter counter-clockwise.
      const wiper = seenLugs(placed, side).get("volume.2")!;
      const middle = seenFrom(side, centre);
      expect(Math.sign(wiper.x - middle.x)).toBe(right);
      expect(wiper.y).toBeCloseTo(middle.y, 6);
      expect(wiper.leave.x).toBeCloseTo(right, 6);
    }
  });

  it("keeps every lug within its box, at every turn", () => {
    for (let turn = 0; turn < 360; turn += 15)
      for (const { name, shape } of placedIn(turnedPart(source, partOf(source, "lever"), turn / 15)))
        for (const { x, y } of shape.lugs) {
          expect(Math.abs(x), `${name} ${turn}`).toBeLessThanOrEqual(shape.width / 2 + 1e-6);
          expect(y, `${name} ${turn}`).toBeGreaterThanOrEqual(-shape.up - 1e-6);
          expect(y, `${name} ${turn}`).toBeLessThanOrEqual(shape.down + 1e-6);
        }
  });
});

it("a free place is free, for every kind and in every catalogued guard", () => {
  for (const { id, plan } of CATALOGUE.plans) {
    const placed = placedIn(expandBuild({ presolder: 1, title: "", plan }) as BuildSource);
    for (const kind of ["pickup", "pot", "switch", "jack", "terminal"]) {
      const { x, y } = freePlace(kind, placed) as { x: number; y: number };
      const [ux, uy] = [x * UNITS_PER_METRE, y * UNITS_PER_METRE];
      const under = placed.filter(
        ({ centre, shape }) =>
          Math.abs(centre.x - ux) < shape.width / 2 + 40 &&
          uy > centre.y - shape.up - 30 &&
          uy < centre.y + shape.down + 30,
      );
      expect(
        under.map(({ name }) => name),
        `${kind} in ${id}`,
      ).toEqual([]);
    }
  }
});

it("arrow keys reach every lug from every other", () => {
  const lugs = seenLugs(placedIn(source), "back");
  const ways = [
    { x: 1, y: 0 },
    { x: -1, y: 0 },
    { x: 0, y: 1 },
    { x: 0, y: -1 },
  ];
  const reached = new Set<string>();
  const queue = [[...lugs.keys()][0]!];
  for (let name = queue.pop(); name !== undefined; name = queue.pop()) {
    if (reached.has(name)) continue;
    reached.add(name);
    queue.push(...ways.flatMap((way) => lugTowards(lugs.values(), lugs.get(name!)!, way) ?? []));
  }
  expect([...lugs.keys()].filter((name) => !reached.has(name))).toEqual([]);
});

it("a wire that loses its colour is the short pair that it was, and keeps what else it has", () => {
  expect(colouredWire(colouredWire(["a.1", "b.2"], " red "), "")).toEqual(["a.1", "b.2"]);
  expect(colouredWire(["a.1", "b.2"], "red")).toEqual({ from: "a.1", to: "b.2", colour: "red" });
  const braid = { from: "a.1", to: "b.2", how: "braid", colour: "red" };
  expect(colouredWire(braid, "")).toEqual({ from: "a.1", to: "b.2", how: "braid" });
});

it("in a guard that is not wired to the end, a join is blamed for what it makes and not for what is missing", () => {
  const unfinished = [{ code: "jack-unwired", lugs: ["jack.tip", "jack.sleeve"], message: "" }] as const;
  const missing = { code: "pickup-silent", lugs: ["neck.hot"], message: "" } as const;
  const short = { code: "hot-shorted", lugs: ["jack.tip"], message: "" } as const;
  expect(newFaults([missing, short], unfinished)).toEqual([short]);
  expect(newFaults([missing, short], [])).toEqual([missing, short]);
  expect(newFaults([missing, short], [missing])).toEqual([short]);
});
