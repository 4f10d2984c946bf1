import type { Guard, GuardLine } from "../../shelf/guard.ts";
import type { Changes, Keeper } from "./keeper.ts";
import { latestFirst } from "./latest-first.ts";
import { type Shelf, ShelfFault } from "./shelf.ts";
import { shelfFaultOf } from "./shelf-faults.ts";

/** Tells the other tabs of this browser what changed. */
export interface Wire {
  tell(ids: readonly string[]): void;
  hear(effect: (ids: readonly string[]) => void): void;
}

const GONE = "This guard is not on the shelf any more; it was deleted, perhaps in another tab.";

/** A shelf on whatever keeps its guards. */
export class KeptShelf implements Shelf {
  readonly lasts: boolean;
  readonly #keeper: Keeper;
  readonly #wire: Wire | undefined;
  readonly #watchers = new Set<(ids: readonly string[]) => void>();

  constructor(keeper: Keeper, lasts: boolean, wire?: Wire) {
    this.lasts = lasts;
    this.#keeper = keeper;
    this.#wire = wire;
    wire?.hear((ids) => this.#tellHere(ids));
  }

  async list(): Promise<readonly GuardLine[]> {
    return this.#asked(async () => latestFirst(await this.#keeper.lines()));
  }

  latest(count: number): Promise<readonly GuardLine[]> {
    return this.#asked(() => this.#keeper.latest(count));
  }

  async get(id: string): Promise<Guard | undefined> {
    return (await this.getAll([id]))[0];
  }

  getAll(ids?: readonly string[]): Promise<readonly Guard[]> {
    return this.#asked(() => this.#keeper.guards(ids));
  }

  async build(id: string): Promise<unknown> {
    const guard = await this.get(id);
    if (!guard) throw new ShelfFault("gone", GONE);
    return JSON.parse(guard.file);
  }

  async put(guards: readonly Guard[]): Promise<void> {
    if (guards.length > 0) await this.#update([], () => ({ put: guards, remove: [] }), guards);
  }

  async add(guards: readonly Guard[]): Promise<readonly Guard[]> {
    let added: readonly Guard[] = [];
    const ids = guards.map(({ id }) => id);
    await this.#update(
      ids,
      (there) => {
        added = guards.filter(({ id }) => !there.has(id));
        return { put: added, remove: [] };
      },
      guards,
    );
    return added;
  }

  async change(id: string, edit: (guard: Guard) => Guard): Promise<Guard> {
    let changed: Guard | undefined;
    await this.#update([id], (there) => {
      const guard = there.get(id);
      if (!guard) throw new ShelfFault("gone", GONE);
      changed = edit(guard);
      return { put: changed === guard ? [] : [changed], remove: [] };
    });
    return changed!;
  }

  async remove(ids: readonly string[]): Promise<void> {
    await this.#update([], () => ({ put: [], remove: ids }));
  }

  subscribe(effect: (ids: readonly string[]) => void): () => void {
    this.#watchers.add(effect);
    return () => this.#watchers.delete(effect);
  }

  async #asked<T>(question: () => Promise<T>): Promise<T> {
    try {
      return await question();
    } catch (error) {
      throw shelfFaultOf(error, []);
    }
  }

  async #update(
    ids: readonly string[],
    edit: (there: ReadonlyMap<string, Guard>) => Changes,
    wanted: readonly Guard[] = [],
  ): Promise<void> {
    let unkept = wanted;
    const told = (there: ReadonlyMap<string, Guard>) => {
      const changes = edit(there);
      unkept = changes.put;
      return changes;
    };
    try {
      const { put, remove } = await this.#keeper.update(ids, told);
      const touched = [...put.map(({ id }) => id), ...remove];
      if (touched.length === 0) return;
      this.#tellHere(touched);
      this.#wire?.tell(touched);
    } catch (error) {
      throw shelfFaultOf(error, unkept);
    }
  }

  #tellHere(ids: readonly string[]): void {
    for (const watcher of [...this.#watchers]) watcher(ids);
  }
}
