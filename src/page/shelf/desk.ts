import { amended } from "../../shelf/amend.ts";
import type { Guard, GuardContent, GuardLine, Version } from "../../shelf/guard.ts";
import { duplicateOf } from "../../shelf/new-guard.ts";
import type { Bench } from "../start/bench.ts";
import { openBuild } from "../start/open-build.ts";
import { parseJson } from "../start/parse-json.ts";
import { keepAs, keptAs } from "../state/kept-as.ts";
import { type Shelf, ShelfFault } from "./shelf.ts";

/** What a person does with the guards of a shelf. */
export class ShelfDesk {
  readonly bench: Bench;
  readonly shelf: Shelf;

  constructor(bench: Bench, shelf: Shelf) {
    this.bench = bench;
    this.shelf = shelf;
  }

  /** Puts a guard on the bench; kept again, it goes to its own place. @throws Error where its file cannot be read */
  async open({ id, name }: Pick<GuardLine, "id" | "name">): Promise<void> {
    const kept = await this.shelf.get(id);
    if (!kept) throw new ShelfFault("gone", `“${name}” is not on the shelf any more.`);
    const guard = {};
    keepAs(guard, id);
    const { store } = this.bench;
    if (!(await openBuild(this.bench, parseJson(kept.file), {}, guard))) throw new Error(store.state.notice);
    store.set({ story: undefined, notice: `On the bench: “${name}” from the shelf.` });
  }

  /** Whether this guard is the one on the bench. */
  isOnBench(id: string): boolean {
    return keptAs(this.bench.store.state.guard) === id;
  }

  /**
   * Changes what is written on a guard. One that was deleted meanwhile comes back with the change, since nothing is to be lost.
   * @param known the guard as it was last read
   * @param seen of the fields changed, what stood there when the person began
   */
  async write(known: Guard, patch: Partial<GuardContent>, seen: Partial<GuardContent>): Promise<Guard> {
    return this.edit(known, (guard) => amended(guard, patch, { at: new Date(), by: "change", seen }));
  }

  async edit(known: Guard, edit: (guard: Guard) => Guard): Promise<Guard> {
    try {
      return await this.shelf.change(known.id, edit);
    } catch (error) {
      if (!(error instanceof ShelfFault) || error.reason !== "gone") throw error;
      const [back] = await this.shelf.add([edit(known)]);
      // Another tab may have brought it back in between.
      return back ?? this.shelf.change(known.id, edit);
    }
  }

  async duplicate(guard: Guard): Promise<Guard> {
    const copy = duplicateOf(guard, new Date());
    await this.shelf.put([copy]);
    return copy;
  }
}

/** A version's fields in words: "build file, notes". */
export function versionWords({ was }: Version): string {
  const words = { file: "wiring", readings: "readings", made: "date" } as const;
  return Object.keys(was)
    .map((field) => words[field as keyof typeof words] ?? field)
    .join(", ");
}
