import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { amended, MAX_VERSIONS } from "../../src/shelf/amend.ts";
import { differingFields } from "../../src/shelf/content.ts";
import type { Guard } from "../../src/shelf/guard.ts";
import { joinedHistory, keptBeside, mergeOf, takenOver } from "../../src/shelf/merge.ts";
import { newGuard } from "../../src/shelf/new-guard.ts";
import { anyShelf } from "./any-guard.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");
const guard: Guard = newGuard({ name: "B", file: "one" }, AT);
const other: Guard = { ...guard, file: "two", notes: "changed elsewhere" };

describe("guards that come to a shelf", () => {
  it("are put there where it has none of them, and a second time are nothing new", () => {
    fc.assert(
      fc.property(anyShelf, (guards) => {
        expect(mergeOf([], guards)).toEqual({ added: guards, grown: [], same: 0, clashes: [] });
        expect(mergeOf(guards, guards)).toEqual({ added: [], grown: [], same: guards.length, clashes: [] });
      }),
    );
  });

  it("with another content of a guard that is there are asked about, with the fields that differ", () => {
    const { added, same, clashes } = mergeOf([guard], [other]);
    expect([added, same]).toEqual([[], 0]);
    expect(clashes).toEqual([{ here: guard, come: other, fields: ["notes", "file"] }]);
  });

  it("kept as both are not asked about again", () => {
    const [clash] = mergeOf([guard], [other]).clashes;
    const beside = keptBeside(clash!);
    expect(beside.id).not.toBe(guard.id);
    expect(differingFields(beside, other)).toEqual([]);
    expect(mergeOf([guard, beside], [other])).toMatchObject({ same: 1, clashes: [] });
  });

  it("taken over leave what stood there in the history, with what their own history has", () => {
    const come = amended({ ...other, file: "zero" }, { file: "two" }, { at: AT, by: "change" });
    const taken = takenOver(guard, come, new Date("2026-04-01T00:00:00Z"));
    expect(differingFields(taken, come)).toEqual([]);
    expect(taken.history.map(({ by, was }) => [by, was])).toEqual([
      ["import", { notes: "", file: "one" }],
      ["change", { file: "zero" }],
    ]);
  });

  it("bring versions that the shelf's own has not", () => {
    const grown = { ...guard, history: [{ at: AT.toISOString(), by: "change" as const, was: { file: "zero" } }] };
    expect(mergeOf([guard], [grown])).toEqual({ added: [], grown: [grown], same: 0, clashes: [] });
    expect(mergeOf([grown], [guard])).toMatchObject({ grown: [], same: 1 });
  });

  it("join histories newest first, each version once, whichever is told first", () => {
    fc.assert(
      fc.property(anyShelf, ([first, second]) => {
        const [a, b] = [first?.history ?? [], second?.history ?? []];
        const joined = joinedHistory(a, b);
        expect(joinedHistory(joined, b)).toBe(joined);
        expect(joined.length).toBeLessThanOrEqual(MAX_VERSIONS);
        for (const version of [...a, ...b]) expect(joined).toContainEqual(version);
      }),
    );
  });
});
