import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { amended, MAX_VERSIONS, restored } from "../../src/shelf/amend.ts";
import { differingFields } from "../../src/shelf/content.ts";
import { newGuard } from "../../src/shelf/new-guard.ts";
import { withoutReadings, withReadings } from "../../src/shelf/readings.ts";
import { anyContent, anyGuard } from "./any-guard.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");
const LATER = new Date("2026-03-02T18:30:00.000Z");
const how = (by: "change" | "import" = "change") => ({ at: LATER, by });

describe("a guard's history", () => {
  it("brings back a replaced build file byte for byte, and has the one that stood there meanwhile", () => {
    fc.assert(
      fc.property(anyGuard, fc.string({ unit: "binary" }), (guard, file) => {
        fc.pre(file !== guard.file);
        const changed = amended(guard, { file }, how());
        const back = restored(changed, changed.history[0]!, LATER);
        expect(back.file).toBe(guard.file);
        expect(back.history[0]).toEqual({ at: LATER.toISOString(), by: "restore", was: { file } });
        const forth = restored(back, back.history[0]!, LATER);
        expect(forth.file).toBe(file);
      }),
    );
  });

  it("has all that an import takes the place of", () => {
    fc.assert(
      fc.property(anyGuard, anyContent, (guard, content) => {
        const changed = amended(guard, content, how("import"));
        const fields = differingFields(guard, content);
        expect(differingFields(changed, content)).toEqual([]);
        if (fields.length === 0) expect(changed).toBe(guard);
        else {
          expect(Object.keys(changed.history[0]!.was)).toEqual(expect.arrayContaining(fields));
          const back = restored(changed, changed.history[0]!, LATER);
          expect(differingFields(back, guard)).toEqual([]);
        }
      }),
    );
  });

  it("leaves out what the person saw before they changed it, and keeps what they cannot have seen", () => {
    const guard = newGuard({ name: "B", notes: "from the other tab", file: "{}" }, AT);
    const seen = amended(guard, { notes: "mine" }, { ...how(), seen: { notes: "from the other tab" } });
    expect(seen.history).toEqual([]);
    const unseen = amended(guard, { notes: "mine" }, { ...how(), seen: { notes: "" } });
    expect(unseen.history).toEqual([
      { at: LATER.toISOString(), by: "another tab", was: { notes: "from the other tab" } },
    ]);
    expect(unseen.notes).toBe("mine");
  });

  it("of two tabs that change one guard, in either order, loses no text and no build file", () => {
    fc.assert(
      fc.property(anyGuard, anyContent, anyContent, (base, first, second) => {
        fc.pre(base.history.length < MAX_VERSIONS - 2);
        const one = amended(base, first, { ...how(), seen: base });
        const both = amended(one, second, { ...how(), seen: base });
        for (const field of differingFields(base, first)) {
          const isThere = differingFields(both, first).includes(field) === false;
          const isPast = both.history.some(({ was }) => JSON.stringify(was[field]) === JSON.stringify(first[field]));
          expect(isThere || isPast, field).toBe(true);
        }
        expect(differingFields(both, second)).toEqual([]);
      }),
    );
  });

  it("keeps the latest versions and no more than it has room for", () => {
    let guard = newGuard({ name: "B", file: "0" }, AT);
    for (let step = 1; step <= MAX_VERSIONS + 5; step += 1) guard = amended(guard, { file: String(step) }, how());
    expect(guard.history).toHaveLength(MAX_VERSIONS);
    expect(guard.history[0]!.was.file).toBe(String(MAX_VERSIONS + 4));
  });

  it("says nothing of a change that changes nothing", () => {
    fc.assert(
      fc.property(anyGuard, (guard) => {
        const { name, file, readings } = guard;
        expect(amended(guard, { name, file, readings: [...readings] }, how())).toBe(guard);
      }),
    );
  });

  it("has the readings that were deleted", () => {
    const set = { id: "r", date: "2026-03-01", note: "cold", values: [{ what: "jack", read: "7.9k" }] };
    const guard = withReadings(newGuard({ name: "B", file: "{}" }, AT), set, LATER);
    const without = withoutReadings(guard, "r", LATER);
    expect(without.readings).toEqual([]);
    expect(restored(without, without.history[0]!, LATER).readings).toEqual([set]);
  });
});

describe("readings", () => {
  const value = (what: string) => ({ what, read: "1k" });
  it("stand by day, the latest first, and those of one day and note together", () => {
    const guard = newGuard({ name: "B", file: "{}" }, AT);
    const old = withReadings(guard, { id: "1", date: "2026-01-05", note: "", values: [value("a")] }, LATER);
    const newer = withReadings(old, { id: "2", date: "2026-02-05", note: "", values: [value("b")] }, LATER);
    const same = withReadings(newer, { id: "3", date: "2026-01-05", note: "", values: [value("c")] }, LATER);
    const noted = withReadings(same, { id: "4", date: "2026-01-05", note: "warm", values: [value("d")] }, LATER);
    expect(noted.readings.map(({ date, note, values }) => [date, note, values.map(({ what }) => what).join()])).toEqual(
      [
        ["2026-02-05", "", "b"],
        ["2026-01-05", "warm", "d"],
        ["2026-01-05", "", "a,c"],
      ],
    );
  });
});
