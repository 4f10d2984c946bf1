import { describe, expect, test } from "vitest";
import { CATALOGUE } from "../../../src/build-file/catalogue.ts";
import { BASES } from "../../../src/build-file/sources/rule.ts";
import { ruleOf, SOURCE_RULES } from "../../../src/build-file/sources/source-of.ts";
import { sourcesOf } from "../../../src/build-file/sources/sources.ts";
import { valuePaths } from "../../../src/build-file/sources/value-paths.ts";
import { WORDS } from "../../../src/build-file/sources/words.ts";
import { WHOLE_CATALOGUE } from "../../../src/server/shelves/whole-catalogue.ts";

const paths = valuePaths(WHOLE_CATALOGUE);

describe("where the catalogue's values come from", () => {
  test("is said of every value", () => {
    expect(paths.length).toBeGreaterThan(500);
    expect(paths.filter((path) => ruleOf(path) === undefined)).toEqual([]);
  });

  test("is said of no value that there is none of, and in no words that nobody uses", () => {
    const used = new Set(paths.map(ruleOf));
    expect(SOURCE_RULES.filter((rule) => !used.has(rule)).map(({ of }) => of)).toEqual([]);
    const spoken = new Set<string>(SOURCE_RULES.map(({ words }) => words));
    expect(Object.keys(WORDS).filter((key) => !spoken.has(key))).toEqual([]);
  });

  test("is told once a value, and with a name or a confession", () => {
    const sources = sourcesOf(WHOLE_CATALOGUE);
    expect(sources.flatMap(({ of }) => of).sort()).toEqual([...paths].sort());
    for (const { basis, words } of sources) {
      expect(BASES).toContain(basis);
      if (basis === "from memory") expect(words, words).toMatch(/from memory|estimate/i);
      if (basis === "common practice") expect(words, words).toMatch(/no source|by its name/i);
      if (basis === "measured") expect(words, words).toMatch(/measured|open data|read/);
      if (basis === "published")
        expect(words, words).toMatch(/published|publish|data sheets|DAFx|IEC|ISO|EIA|Judge|Kuehnel/);
    }
  });

  test("falls to the right rule where several fit", () => {
    const basisOf = (path: string) => ruleOf(path)?.basis;
    expect(basisOf("pickups.single-medium.coils.coil.inductance")).toBe("published");
    expect(basisOf("pickups.p90.coils.coil.inductance")).toBe("measured");
    expect(basisOf("pickups.mini-humbucker.coils.slug.loss.0.resistance")).toBe("common practice");
    expect(basisOf("pickups.humbucker-medium.coils.slug.aperture")).toBe("from memory");
    expect(basisOf("pickups.stacked-single.coupling")).toBe("from memory");
    expect(basisOf("dielectrics.paper.loss.0")).toBe("from memory");
    expect(basisOf("dielectrics.ceramic-z5u.temperature.change.0")).toBe("published");
    expect(basisOf("loads.interface.capacitance")).toBe("published");
    expect(basisOf("loads.nothing.such.here")).toBeUndefined();
    expect(basisOf("pots")).toBeUndefined();
  });

  test("names entries by what they are called", () => {
    expect(paths).toEqual(
      expect.arrayContaining([
        "pots.250k.value",
        "loads.triode.stopper",
        "dielectrics.film-pet.loss.0",
        "cables.low.capacitance",
      ]),
    );
    expect(new Set(paths).size).toBe(paths.length);
    expect(CATALOGUE.pickups.every(({ name }) => paths.some((path) => path.startsWith(`pickups.${name}.`)))).toBe(true);
  });
});
