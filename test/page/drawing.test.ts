import { describe, expect, it } from "vitest";
import { CATALOGUE } from "../../src/build-file/catalogue.ts";
import { expandBuild } from "../../src/build-file/expand.ts";
import { arrangeParts, type Placed } from "../../src/page/drawing/arrange.ts";
import { seenLugs } from "../../src/page/drawing/laid-guard.ts";
import { seenFrom } from "../../src/page/drawing/view.ts";
import { KnownGuard } from "../../src/page/engine/known-guard.ts";
import { readSource } from "../../src/page/engine/source-reader.ts";
import type { BuildSource, Reading } from "../../src/page/state/reading.ts";
import { onePickup, threeSingles } from "../fixtures/circuits.ts";

function read(input: unknown): Reading {
  const result = readSource(expandBuild(input) as BuildSource);
  if (!("reading" in result)) throw new Error(JSON.stringify(result.faults));
  return result.reading;
}

const planned = (id: string) =>
  read({ presolder: 1, title: "", plan: CATALOGUE.plans.find((plan) => plan.id === id)!.plan });

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const boxOf = ({ centre, shape }: Placed): Box => ({
  left: centre.x - shape.width / 2,
  right: centre.x + shape.width / 2,
  top: centre.y - shape.up,
  bottom: centre.y + shape.down,
});

function overlapping(placed: readonly Placed[]): string[] {
  return placed.flatMap((a, index) =>
    placed.slice(index + 1).flatMap((b) => {
      const [one, two] = [boxOf(a), boxOf(b)];
      const meet = one.left < two.right && two.left < one.right && one.top < two.bottom && two.top < one.bottom;
      return meet ? [`${a.name} and ${b.name}`] : [];
    }),
  );
}

const byX = (lugs: ReturnType<typeof seenLugs>, names: readonly string[]) =>
  [...names].sort((a, b) => lugs.get(a)!.x - lugs.get(b)!.x);

// Lug 1 at the counter-clockwise end, counted from the shaft: common practice, no source.
describe("the sides of the drawing", () => {
  const pots = CATALOGUE.plans.flatMap(({ id }) => {
    const placed = arrangeParts(planned(id).build);
    return placed.filter(({ part }) => part.kind === "pot").map(({ name }) => ({ id, name, placed }));
  });

  it.each(pots)("read the lugs of $name of $id 3, 2, 1 from the back and 1, 2, 3 from the front, lugs down", (pot) => {
    const names = ["1", "2", "3"].map((lug) => `${pot.name}.${lug}`);
    const { centre } = pot.placed.find((each) => each.name === pot.name)!;
    for (const side of ["back", "front"] as const) {
      const lugs = seenLugs(pot.placed, side);
      for (const name of names) expect(lugs.get(name)!.y).toBeGreaterThan(seenFrom(side, centre).y);
      expect(byX(lugs, names)).toEqual(side === "front" ? names : names.toReversed());
    }
  });

  it.each(CATALOGUE.plans.map(({ id }) => id))("are mirror images of each other, left for right, in %s", (id) => {
    const placed = arrangeParts(planned(id).build);
    const [back, front] = [seenLugs(placed, "back"), seenLugs(placed, "front")];
    for (const [name, lug] of back) {
      const { x, y, label } = front.get(name)!;
      expect({ x, y, label }, name).toEqual({ x: -lug.x, y: lug.y, label: lug.label });
    }
  });

  it("exchange left and right within a switch as well", () => {
    const placed = arrangeParts(read(threeSingles()).build);
    const names = ["lever.A1", "lever.A2", "lever.A3"];
    expect(byX(seenLugs(placed, "back"), names)).toEqual(byX(seenLugs(placed, "front"), names).toReversed());
  });
});

describe("the drawing", () => {
  it.each(CATALOGUE.plans.map(({ id }) => id))("lays out %s without parts on each other", (id) => {
    expect(overlapping(arrangeParts(planned(id).build))).toEqual([]);
  });

  it("lays out builds that say no places", () => {
    expect(overlapping(arrangeParts(read(onePickup()).build))).toEqual([]);
    expect(overlapping(arrangeParts(read(threeSingles()).build))).toEqual([]);
  });

  it("follows the signal from the coil to the jack", () => {
    const path = new KnownGuard(read(threeSingles())).pathIn({ lever: 5, tone1: 10, tone2: 10, volume: 10 });
    expect(path.inWords).toEqual([
      ["neck (coil)", "neck.hot", "lever.A3", "lever.A0", "volume.3", "volume.2", "jack.tip"],
    ]);
  });

  it("takes both pickups of a position that joins two", () => {
    const { hot, inWords } = new KnownGuard(read(threeSingles())).pathIn({ lever: 2 });
    const starts = hot.filter((step) => step.from.endsWith(".hot")).map((step) => step.from);
    expect(starts.sort()).toEqual(["bridge.hot", "middle.hot"]);
    expect(inWords.map((way) => [way[0], way.at(-1)]).sort()).toEqual([
      ["bridge (coil)", "jack.tip"],
      ["middle (coil)", "jack.tip"],
    ]);
  });

  it("counts a tone that the position leaves out among what is idle, and one that it takes in among what is alive", () => {
    const alive = (lever: number) =>
      new Set(new KnownGuard(read(threeSingles())).pathIn({ lever }).live.elements.map((element) => element.part));
    expect(alive(5)).toContain("tone1");
    expect(alive(5)).not.toContain("tone2");
    expect(alive(1)).not.toContain("tone1");
    expect(alive(3)).toContain("tone2");
    expect(alive(3)).toContain("cap");
  });

  it("sees one coil of a split humbucker go silent", () => {
    const reading = planned("hss-push-pull-split");
    const control = reading.controls.switches.find((each) => each.onShaft)!.name;
    const coils = (value: string) =>
      new KnownGuard(reading)
        .pathIn({ [reading.controls.main!.name]: 1, [control]: value })
        .description.coils.map(({ coil }) => coil);
    expect(coils("down")).toHaveLength(2);
    expect(coils("up")).toHaveLength(1);
  });

  it("finds no way to the jack where the volume's wiper is cut", () => {
    const build = threeSingles() as { wires: unknown[] };
    const wires = build.wires.filter((wire) => JSON.stringify(wire) !== '["volume.2","jack.tip"]');
    const path = new KnownGuard(read({ ...build, wires })).pathIn({ lever: 5 });
    expect(path.inWords).toEqual([]);
    expect(path.description.label).toBe("silent");
    expect(path.live.elements).toEqual([]);
  });
});
