import type { Guard, GuardLine } from "../../shelf/guard.ts";
import { lineOf } from "../../shelf/line.ts";
import type { Changes, Keeper } from "./keeper.ts";
import { latestFirst } from "./latest-first.ts";

/** Keeps guards until the page is closed, where the browser stores nothing. */
export class MemoryKeeper implements Keeper {
  readonly #guards = new Map<string, Guard>();

  async lines(): Promise<readonly GuardLine[]> {
    return [...this.#guards.values()].map(lineOf);
  }

  async latest(count: number): Promise<readonly GuardLine[]> {
    return latestFirst(await this.lines()).slice(0, count);
  }

  async guards(ids?: readonly string[]): Promise<readonly Guard[]> {
    return ids ? ids.flatMap((id) => this.#guards.get(id) ?? []) : [...this.#guards.values()];
  }

  async update(ids: readonly string[], edit: (there: ReadonlyMap<string, Guard>) => Changes): Promise<Changes> {
    const there = new Map((await this.guards(ids)).map((guard) => [guard.id, guard]));
    const changes = edit(there);
    for (const guard of changes.put) this.#guards.set(guard.id, guard);
    for (const id of changes.remove) this.#guards.delete(id);
    return changes;
  }
}
