import { describe, expect, it } from "vitest";
import type { Changes, Keeper } from "../../../src/page/shelf/keeper.ts";
import { KeptShelf } from "../../../src/page/shelf/kept-shelf.ts";
import { MemoryKeeper } from "../../../src/page/shelf/memory-keeper.ts";
import { ShelfFault } from "../../../src/page/shelf/shelf.ts";
import { amended } from "../../../src/shelf/amend.ts";
import type { Guard } from "../../../src/shelf/guard.ts";
import { guardCalled } from "./shelf-page.ts";

const AT = new Date("2026-03-01T18:30:00.000Z");
const noted = (guard: Guard) => amended(guard, { notes: "n" }, { at: AT, by: "change" });

/** Keeps nothing, for a reason of the browser's. */
class FullKeeper extends MemoryKeeper {
  reason: Error | undefined;

  override async update(ids: readonly string[], edit: (there: ReadonlyMap<string, Guard>) => Changes) {
    if (!this.reason) return super.update(ids, edit);
    edit(new Map((await this.guards(ids)).map((guard) => [guard.id, guard])));
    throw this.reason;
  }
}

async function faultOf(action: Promise<unknown>): Promise<ShelfFault> {
  const fault = await action.then(
    () => undefined,
    (error) => error as ShelfFault,
  );
  expect(fault).toBeInstanceOf(ShelfFault);
  return fault!;
}

describe("a shelf", () => {
  it("adds what is not there, and leaves what is as another tab wrote it", async () => {
    const shelf = new KeptShelf(new MemoryKeeper(), true);
    const [old, fresh] = [guardCalled("old"), guardCalled("fresh")];
    await shelf.put([noted(old)]);
    expect(await shelf.add([old, fresh])).toEqual([fresh]);
    expect(await shelf.getAll([old.id, fresh.id])).toEqual([noted(old), fresh]);
  });

  it("lists what was changed last first, and tells whoever watches what was touched", async () => {
    const shelf = new KeptShelf(new MemoryKeeper(), true);
    const told: (readonly string[])[] = [];
    const stop = shelf.subscribe((ids) => told.push(ids));
    const [old, late] = [
      guardCalled("old", { changed: "2026-01-01T00:00:00.000Z" }),
      guardCalled("late", { changed: "2026-02-01T00:00:00.000Z" }),
    ];
    await shelf.put([old, late]);
    expect((await shelf.list()).map(({ name }) => name)).toEqual(["late", "old"]);
    expect((await shelf.latest(1)).map(({ name }) => name)).toEqual(["late"]);
    await shelf.change(old.id, noted);
    expect((await shelf.list()).map(({ name }) => name)).toEqual(["old", "late"]);
    await shelf.change(old.id, (guard) => guard);
    await shelf.remove([late.id]);
    expect(told).toEqual([[old.id, late.id], [old.id], [late.id]]);
    stop();
    await shelf.put([late]);
    expect(told).toHaveLength(3);
    expect(await shelf.get(late.id)).toBe(late);
    expect(await shelf.build(late.id)).toMatchObject({ presolder: 1, title: "late" });
  });

  it("tells other tabs what it does, and its own watchers what others do", async () => {
    const sent: (readonly string[])[] = [];
    let hear: (ids: readonly string[]) => void = () => undefined;
    const wire = { tell: (ids: readonly string[]) => sent.push(ids), hear: (effect: typeof hear) => (hear = effect) };
    const shelf = new KeptShelf(new MemoryKeeper(), true, wire);
    const told: (readonly string[])[] = [];
    shelf.subscribe((ids) => told.push(ids));
    hear(["from elsewhere"]);
    const guard = guardCalled("here");
    await shelf.put([guard]);
    expect([told, sent]).toEqual([[["from elsewhere"], [guard.id]], [[guard.id]]]);
  });

  it.each([
    ["full", new DOMException("no", "QuotaExceededError"), /no room left/],
    ["refused", new DOMException("broken", "UnknownError"), /did not store this \(broken\)/],
  ])("that is %s says so, with what it could not keep, and is as it was", async (reason, error, message) => {
    const keeper: Keeper & { reason: Error | undefined } = new FullKeeper();
    const shelf = new KeptShelf(keeper, true);
    const [there, more] = [guardCalled("there"), guardCalled("more")];
    await shelf.put([there]);
    keeper.reason = error;
    const told: unknown[] = [];
    shelf.subscribe((ids) => told.push(ids));
    const put = await faultOf(shelf.put([more]));
    expect(put).toMatchObject({ reason, message: expect.stringMatching(message), unkept: [more] });
    const change = await faultOf(shelf.change(there.id, noted));
    expect(change.unkept).toEqual([noted(there)]);
    expect(await shelf.getAll()).toEqual([there]);
    expect(told).toEqual([]);
  });

  it("says that a guard is gone which another tab has deleted", async () => {
    const shelf = new KeptShelf(new MemoryKeeper(), true);
    expect(await shelf.get("nobody")).toBeUndefined();
    for (const action of [shelf.change("nobody", noted), shelf.build("nobody")])
      expect((await faultOf(action)).reason).toBe("gone");
  });
});
