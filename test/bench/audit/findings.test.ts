import { describe, expect, test } from "vitest";
import { auditBuild, FINDING_CODES, type FindingCode } from "../../../src/bench/audit/audit.ts";
import { buildOf, type Changes, type Guard, splitHumbucker, threeSingles, twoHumbuckers } from "./guards.ts";
import type { WrongBuild } from "./wrong-build.ts";
import { WRONG_PATHS } from "./wrong-paths.ts";
import { WRONG_SOUNDS } from "./wrong-sounds.ts";

const WELL_WIRED: Readonly<Record<string, Guard>> = { threeSingles, twoHumbuckers, splitHumbucker };

/** For every code, a guard wired so that it must fire; the same guards unharmed are the cases where it must not. */
const WRONG_BUILDS: Readonly<Record<FindingCode, readonly WrongBuild[]>> = { ...WRONG_PATHS, ...WRONG_SOUNDS };

const firing = Object.entries(WRONG_BUILDS).flatMap(([code, builds]) =>
  builds.map((build): [string, string, WrongBuild] => [code, build.wrong, build]),
);

describe("every code fires on a guard wired wrongly for it", () => {
  test.each(firing)("%s: %s", (code, _, { guard, changes, expected }) => {
    const found = auditBuild(buildOf(guard, changes)).filter((finding) => finding.code === code);
    expect(found.length).toBeGreaterThan(0);
    expect(found[0]).toMatchObject(expected);
  });
});

describe("a well-wired guard", () => {
  test.each(Object.entries(WELL_WIRED))("%s has no finding above a note", (_, guard) => {
    expect(auditBuild(buildOf(guard)).filter(({ severity }) => severity !== "note")).toEqual([]);
  });

  const silentCodes = (Object.keys(FINDING_CODES) as FindingCode[]).flatMap((code) =>
    Object.entries(WELL_WIRED)
      .filter(
        ([, guard]) =>
          !WRONG_BUILDS[code].some((wrong) => wrong.guard === guard && Object.keys(wrong.changes).length === 0),
      )
      .map(([name, guard]): [FindingCode, string, Guard] => [code, name, guard]),
  );
  test.each(silentCodes)("gives no %s on %s", (code, _, guard) => {
    expect(auditBuild(buildOf(guard)).map((finding) => finding.code)).not.toContain(code);
  });
});

describe("the table of codes", () => {
  test("every code has a title and a meaning, and a name of plain words", () => {
    for (const [code, { title, meaning }] of Object.entries(FINDING_CODES)) {
      expect(code).toMatch(/^[a-z]+(-[a-z]+)+$/);
      expect(title.length).toBeGreaterThan(10);
      expect(meaning.length).toBeGreaterThan(20);
    }
  });
});

describe("one fault is told once", () => {
  const codesAboveNote = (guard: Guard, changes: Changes) =>
    auditBuild(buildOf(guard, changes))
      .filter(({ severity }) => severity !== "note")
      .map(({ code }) => code);

  test.each([
    ["hot-shorted", 0, ["hot-shorted"]],
    ["hot-shorted", 1, ["hot-shorted", "pickup-silent"]],
    ["jack-swapped", 0, ["jack-swapped"]],
    ["coils-out-of-phase", 0, ["coils-out-of-phase"]],
    ["volume-backwards", 0, ["volume-backwards"]],
    ["unused-lug-touches", 0, ["unused-lug-touches"]],
  ] as const)("%s, build %i", (code, index, expected) => {
    const { guard, changes } = WRONG_BUILDS[code][index]!;
    expect(codesAboveNote(guard, changes)).toEqual(expected);
  });

  test("pots that are wired wrongly are not said to load the pickups", () => {
    const { guard, changes } = WRONG_BUILDS["volume-backwards"][0]!;
    expect(auditBuild(buildOf(guard, changes)).map(({ code }) => code)).not.toContain("load-unusual");
  });
});
