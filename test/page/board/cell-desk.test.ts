import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { compare } from "../../../src/choice/compare/compare.ts";
import { driveOfPartials } from "../../../src/choice/drive.ts";
import { Guard } from "../../../src/choice/guard.ts";
import { CellDesk, MOST_CELLS } from "../../../src/page/cells/cell-desk.ts";
import { pluckedPartials } from "../../../src/render/plucked-partials.ts";
import { coilPlaces, stringSetOf } from "../../../src/response/coil-places.ts";
import { threeSingles } from "../../fixtures/circuits.ts";

const usual = readBuild(threeSingles());
const darker = readBuild(threeSingles({ rest: { cable: { length: "8m", capacitance: "150pF/m" } } }));
const question = { builds: [usual, darker, usual], tones: "turned" as const, playing: {} };
const ignore = () => undefined;

async function mapped() {
  const desk = new CellDesk();
  return { desk, told: await desk.map(question, ignore) };
}

describe("the map of three guards, the third like the first", () => {
  it("has every cell, brighter to the right, and like guards in like places", async () => {
    const { told } = await mapped();
    expect([told.cells.length, told.silent, told.cut]).toEqual([60, 0, []]);
    expect(told.stress1).toBeGreaterThan(0);
    expect(told.stress1).toBeLessThan(0.2);
    const xs = told.cells.map((_, cell) => told.places[2 * cell]!);
    const brightest = told.cells.reduce(
      (best, cell, at) => (cell.brightnessHz > told.cells[best]!.brightnessHz ? at : best),
      0,
    );
    expect(xs[brightest]).toBeGreaterThan(0);
    for (let cell = 0; cell < 20; cell++) expect(xs[cell + 40]).toBeCloseTo(xs[cell]!, 6);
  });

  it("finds every cell of the first on the third again, and what the second adds", async () => {
    const { desk } = await mapped();
    const { equals, groups, added } = desk.equals("none");
    for (let cell = 0; cell < 20; cell++) expect(equals[cell]).toContain(cell + 40);
    expect(groups.flat().filter((cell) => cell < 20)).toHaveLength(20);
    expect(added.map(({ guard, of }) => [guard, of])).toEqual([
      [0, 20],
      [1, 20],
      [2, 20],
    ]);
    expect([added[0]!.cells, added[2]!.cells]).toEqual([[], []]);
    expect(added[1]!.cells.length).toBeGreaterThan(0);
  });

  it("needs one guard for what the first has, and two for a sound of the second besides", async () => {
    const { desk } = await mapped();
    const { added } = desk.equals("none");
    expect(desk.fewest([0, 3, 44])).toEqual({ guards: [0], isFewest: true, atLeast: 1 });
    expect(desk.fewest([0, 44, added[1]!.cells[0]!]).guards).toHaveLength(2);
  });

  it("agrees with a comparison about what nobody hears", async () => {
    const { desk, told } = await mapped();
    const { equals } = desk.equals("none");
    const sideOf = (build: typeof usual) => {
      const guard = new Guard(build);
      const partials = pluckedPartials(coilPlaces(build, guard.sources), stringSetOf(build), {});
      return { guard, drive: driveOfPartials("strum", partials, guard.sources.length) };
    };
    const settings = told.cells.slice(0, 20).map((cell) => parseSettings(new Controls(usual), cell.settings));
    const { rows } = compare({ ...sideOf(usual), settings }, { ...sideOf(darker), settings }, null);
    const said = rows.map(({ audible }) => audible === "none");
    expect(said).toEqual(settings.map((_, cell) => equals[cell]!.includes(cell + 20)));
    expect(new Set(said).size).toBe(2);
  });
});

describe("the cells' desk", () => {
  it("says how far it has come, up to the end of the sounds and on", async () => {
    const shares: number[] = [];
    await new CellDesk().map(question, (share) => shares.push(share));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares[0]).toBeLessThan(0.2);
    expect(shares.some((share) => share > 0.5)).toBe(true);
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
  });

  it("gives up a map when another is asked for", async () => {
    const desk = new CellDesk();
    const first = desk.map(question, ignore);
    const second = desk.map({ ...question, builds: [usual] }, ignore);
    await expect(first).rejects.toThrow("another map was asked for");
    expect((await second).cells).toHaveLength(20);
  });

  it("refuses more cells than a phone lays out, and says how many", async () => {
    const builds = Array.from({ length: 101 }, () => usual);
    await expect(new CellDesk().map({ ...question, builds }, ignore)).rejects.toThrow(
      `2020 cells are too many for one map; expected at most ${MOST_CELLS}`,
    );
  });

  it("leaves silent cells and harnesses without pickups out of the map", async () => {
    const harness = readBuild(threeSingles());
    const parts = Object.fromEntries(Object.entries(harness.parts).filter(([, { kind }]) => kind !== "pickup"));
    const told = await new CellDesk().map(
      { ...question, builds: [{ ...harness, parts, wires: [] } as never, usual] },
      ignore,
    );
    expect(new Set(told.cells.map(({ guard }) => guard))).toEqual(new Set([1]));
  });

  it("tells figures of one cell: a single coil's hum, and none of two that cancel", () => {
    const desk = new CellDesk();
    const [one, two] = [1, 2].map((lever) => desk.figures(usual, { lever }, {}));
    expect(one!.label).toContain("bridge");
    expect(two!.label).toContain("middle + bridge");
    expect(one!.hum! - two!.hum!).toBeGreaterThan(10);
    expect(one!.peak!.frequency).toBeGreaterThan(2000);
    expect(desk.figures(usual, { volume: 0 }, {})).toMatchObject({ loudnessLu: null, brightnessHz: null });
  });
});
