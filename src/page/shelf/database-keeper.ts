import type { Guard, GuardLine } from "../../shelf/guard.ts";
import { lineOf } from "../../shelf/line.ts";
import type { Changes, Keeper } from "./keeper.ts";
import { keptLine, openShelfDatabase, type ShelfDatabase } from "./shelf-database.ts";

/** Undone as a whole, if it is not already. */
async function aborted(transaction: { abort(): void; readonly done: Promise<void> }): Promise<void> {
  try {
    transaction.abort();
  } catch {
    // It ended by itself.
  }
  await transaction.done.catch(() => undefined);
}

/** Keeps guards in the browser's own database, opened again where the browser let go of it. */
export class DatabaseKeeper implements Keeper {
  #opening: Promise<ShelfDatabase> | undefined;

  database(): Promise<ShelfDatabase> {
    this.#opening ??= openShelfDatabase(() => {
      this.#opening = undefined;
    }).catch((error) => {
      this.#opening = undefined;
      throw error;
    });
    return this.#opening;
  }

  async lines(): Promise<readonly GuardLine[]> {
    return (await this.database()).getAll("lines");
  }

  async latest(count: number): Promise<readonly GuardLine[]> {
    return (await this.database()).getAllFromIndex("lines", "age", undefined, count);
  }

  async guards(ids?: readonly string[]): Promise<readonly Guard[]> {
    const { store } = (await this.database()).transaction("guards");
    if (!ids) return store.getAll();
    return (await Promise.all(ids.map((id) => store.get(id)))).filter((guard) => guard !== undefined);
  }

  async update(ids: readonly string[], edit: (there: ReadonlyMap<string, Guard>) => Changes): Promise<Changes> {
    const database = await this.database();
    // "strict": told as kept only once it is on the disk.
    const transaction = database.transaction(["guards", "lines", "drawings"], "readwrite", { durability: "strict" });
    try {
      const guards = transaction.objectStore("guards");
      const lines = transaction.objectStore("lines");
      const found = await Promise.all(ids.map((id) => guards.get(id)));
      const there = found.filter((guard) => guard !== undefined);
      const changes = edit(new Map(there.map((guard) => [guard.id, guard])));
      const drawings = transaction.objectStore("drawings");
      await Promise.all([
        ...changes.put.flatMap((guard) => [guards.put(guard), lines.put(keptLine(lineOf(guard)))]),
        ...changes.remove.flatMap((id) => [guards.delete(id), lines.delete(id), drawings.delete(id)]),
      ]);
      await transaction.done;
      return changes;
    } catch (error) {
      await aborted(transaction);
      throw transaction.error ?? error;
    }
  }
}
