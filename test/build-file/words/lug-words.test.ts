import { describe, expect, test } from "vitest";
import { parseLongForm } from "../../../src/build-file/build-file.ts";
import { LugTable } from "../../../src/build-file/lugs.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { LugWords } from "../../../src/build-file/words/lug-words.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";
import { presetGuard, withoutPickups } from "../../fixtures/harness.ts";

const wordsOf = (id: string) => new LugWords(readBuild(presetGuard(id)));

describe("a lug in words", () => {
  test.each([
    ["hss-push-pull-split", "tone2.1", "lower tone, lug 1 (counter-clockwise end)"],
    ["hss-push-pull-split", "tone1.2", "upper tone, lug 2 (wiper)"],
    ["hss-push-pull-split", "volume.case", "volume, case"],
    ["hss-push-pull-split", "lever.B3", "lever, lug of the neck pickup, second side"],
    ["hss-push-pull-split", "lever.A0", "lever, common, first side"],
    ["hss-push-pull-split", "bridge.slug.start", "bridge humbucker, slug coil (north), start"],
    ["hss-push-pull-split", "bridge.shield", "bridge humbucker, baseplate"],
    ["hss-push-pull-split", "neck.coil.finish", "neck single coil, hot lead"],
    ["hss-push-pull-split", "tone2.s.A2", "lower tone's push-pull, up lug, first side"],
    ["hss-push-pull-split", "cap2.a", "tone cap 2, one leg"],
    ["humbuckers-two-volumes", "toggle.A1", "toggle, lug of the bridge volume"],
    ["one-p90", "tone.3", "tone, lug 3 (clockwise end)"],
    ["one-p90", "bridge.hot", "bridge wide single coil, hot lead"],
    ["one-p90", "claw", "spring claw"],
  ])("%s: %s is “%s”", (id, lug, words) => {
    expect(wordsOf(id).of(lug)).toBe(words);
  });

  test("of a switch that no pickup is on is told by its positions", () => {
    const words = new LugWords(parseLongForm(withoutPickups(presetGuard("singles-neck-middle"))));
    expect(words.of("lever.A2")).toBe("lever, lug of positions 2, 3 and 4, first side");
  });

  test("of a second coil of the same pole is told by the coil's name alone", () => {
    const guard = presetGuard("hss-push-pull-split");
    const alike = JSON.parse(JSON.stringify(guard).replace('"south"', '"north"'));
    alike.parts.bridge.coils.screw.magnet = "north";
    expect(new LugWords(readBuild(alike)).of("bridge.slug.start")).toBe("bridge humbucker, slug coil, start");
  });

  test("is found again by its words and by its code, whatever the capitals, in every guard there is", () => {
    const guards = [
      ...PLAN_PRESETS.map(({ id }) => readBuild(presetGuard(id))),
      ...scenarioBuilds.map(({ build }) => build),
    ];
    for (const build of guards) {
      const words = new LugWords(build);
      const table = new LugTable(build.parts);
      const said = table.lugs.map(({ name }) => words.of(name));
      expect(new Set(said).size).toBe(said.length);
      for (const [index, { name }] of table.lugs.entries()) {
        expect(words.find(said[index]!.toUpperCase())).toBe(name);
        expect(words.find(` ${name.toUpperCase()} `)).toBe(name);
      }
    }
  });

  test("a name that no lug has stays as it is, and is found nowhere", () => {
    expect(wordsOf("one-p90").of("volume.9")).toBe("volume.9");
    expect(wordsOf("one-p90").find("volume.9")).toBeUndefined();
  });
});
