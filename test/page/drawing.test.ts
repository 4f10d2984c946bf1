import { describe, expect, it } from "vitest";
import { CATALOGUE } from "../../src/build/catalogue.ts";
import { expandBuild } from "../../src/build/expand.ts";
import { arrangeParts, type Placed } from "../../src/page/drawing/arrange.ts";
import { findLivePath } from "../../src/page/drawing/live-path.ts";
import { type BuildSource, type Reading, readSource } from "../../src/page/state/reading.ts";
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

describe("the drawing", () => {
  it.each(CATALOGUE.plans.map(({ id }) => id))("lays out %s without parts on each other", (id) => {
    expect(overlapping(arrangeParts(planned(id).build))).toEqual([]);
  });

  it("lays out builds that say no places", () => {
    expect(overlapping(arrangeParts(read(onePickup()).build))).toEqual([]);
    expect(overlapping(arrangeParts(read(threeSingles()).build))).toEqual([]);
  });

  it("follows the signal from the coil to the jack", () => {
    const path = findLivePath(read(threeSingles()), { lever: 5, tone1: 10, tone2: 10, volume: 10 });
    expect(path.inWords).toEqual([
      "neck (coil)",
      "neck.hot",
      "lever.A3",
      "lever.A0",
      "volume.3",
      "volume.2",
      "jack.tip",
    ]);
  });

  it("takes both pickups of a position that joins two", () => {
    const { hot } = findLivePath(read(threeSingles()), { lever: 2 });
    const starts = hot.filter((step) => step.from.endsWith(".hot")).map((step) => step.from);
    expect(starts.sort()).toEqual(["bridge.hot", "middle.hot"]);
  });

  it("counts a tone that the position leaves out among what is idle, and one that it takes in among what is alive", () => {
    const alive = (lever: number) =>
      new Set(findLivePath(read(threeSingles()), { lever }).live.elements.map((element) => element.part));
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
      findLivePath(reading, { [reading.controls.main!.name]: 1, [control]: value }).description.coils.map(
        ({ coil }) => coil,
      );
    expect(coils("down")).toHaveLength(2);
    expect(coils("up")).toHaveLength(1);
  });

  it("finds no way to the jack where the volume's wiper is cut", () => {
    const build = threeSingles() as { wires: unknown[] };
    const wires = build.wires.filter((wire) => JSON.stringify(wire) !== '["volume.2","jack.tip"]');
    const path = findLivePath(read({ ...build, wires }), { lever: 5 });
    expect(path.inWords).toEqual([]);
    expect(path.description.label).toBe("silent");
    expect(path.live.elements).toEqual([]);
  });
});
