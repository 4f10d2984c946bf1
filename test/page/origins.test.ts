import { describe, expect, it } from "vitest";
import { CATALOGUE } from "../../src/build-file/catalogue.ts";
import { expandBuild } from "../../src/build-file/expand.ts";
import { valuePaths } from "../../src/build-file/sources/value-paths.ts";
import { originOf } from "../../src/page/sources/origin-of.ts";
import { rulesUnder } from "../../src/page/sources/rules-under.ts";
import type { Path } from "../../src/page/state/paths.ts";
import type { BuildSource } from "../../src/page/state/reading.ts";
import { WHOLE_CATALOGUE } from "../../src/server/shelves/whole-catalogue.ts";

const paths = valuePaths(WHOLE_CATALOGUE);
const guards = CATALOGUE.plans.map(
  ({ plan }) => expandBuild({ presolder: 1, plan, cable: { length: "3m", capacitance: "100p" } }) as BuildSource,
);

/** Every place of a build file that a field may stand for. */
function placesIn(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([key, inner]) => placesIn(inner, [...path, key]))];
}

describe("values of a guard that are the catalogue's", () => {
  it("are found where the catalogue has them, in every customary guard", () => {
    const found = guards.flatMap((guard) => placesIn(guard).map((path) => originOf(guard, path))).filter(Boolean);
    expect(found.length).toBeGreaterThan(300);
    for (const origin of found) {
      const isThere = paths.some((path) => path === origin!.of || path.startsWith(`${origin!.of}.`));
      expect(isThere, origin!.of).toBe(true);
      expect(rulesUnder(origin!.of).size, origin!.of).toBeGreaterThan(0);
    }
  });

  it("are every number of a pickup as its type brings it, its place and its metal included", () => {
    const guard = guards[0]!;
    const path = ["parts", "neck", "coils", "coil"];
    expect(originOf(guard, [...path, "inductance"])).toMatchObject({
      of: "pickups.single-vintage.coils.coil.inductance",
      shown: expect.stringMatching(/ H$/),
    });
    expect(originOf(guard, [...path, "distance"])?.of).toBe("defaults.places.three.neck");
    expect(originOf(guard, ["parts", "neck", "type"])?.of).toBe("pickups.single-vintage");
  });

  it("are no longer the catalogue's once they are another, and the same however they are written", () => {
    const guard = guards[0]!;
    const pot = (resistance: unknown) =>
      originOf({ ...guard, parts: { p: { kind: "pot", resistance } } }, ["parts", "p", "resistance"])?.of;
    expect([pot("250k"), pot(250e3), pot("0.25M"), pot("251k"), pot("many"), pot(undefined)]).toEqual([
      "pots.250k.value",
      "pots.250k.value",
      "pots.250k.value",
      undefined,
      undefined,
      undefined,
    ]);
  });

  it("are an input's and a cable's where they are a customary one's, and what is taken where nothing is said", () => {
    const guard = guards[0]!;
    const load = { resistance: "1M", capacitance: "105pF", stopper: "68k" };
    expect(originOf({ ...guard, load }, ["load", "capacitance"])?.of).toBe("loads.triode.capacitance");
    expect(originOf({ ...guard, load }, ["load", "kind"])?.of).toBe("loads.triode");
    expect(originOf({ ...guard, load: { ...load, stopper: "47k" } }, ["load", "capacitance"])).toBeUndefined();
    expect(originOf(guard, ["load", "resistance"])?.of).toBe("defaults.load.resistance");
    expect(originOf(guard, ["cable", "capacitance"])?.of).toBe("cables.ordinary.capacitance");
    expect(originOf(guard, ["strings", "scale"])?.of).toBe("defaults.scale");
    expect(
      originOf({ ...guard, parts: { c: { kind: "cap", dielectric: "paper" } } }, ["parts", "c", "tolerance"])?.of,
    ).toBe("dielectrics.paper.tolerance");
  });
});
