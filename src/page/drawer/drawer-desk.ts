import { drawerInput, EMPTY_DRAWER, type KeptDrawer } from "../../drawer/kept-drawer.ts";
import { faultLine } from "../../errors.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { latestOnly } from "../dom/later.ts";
import type { DrawerTold } from "../engine/drawer-answer.ts";
import type { PartsTold } from "../engine/guard-parts-told.ts";
import { openShelf } from "../shelf/open-shelf.ts";
import type { Bench } from "../start/bench.ts";
import { parseJson } from "../start/parse-json.ts";
import { type DrawerKeeper, openDrawer } from "./drawer-keeper.ts";
import { asksOf, guardsBeside } from "./guards-beside.ts";
import type { DrawerGuard } from "./guards-table.ts";
import type { PartsFor } from "./taken-parts.ts";

/** The drawer and the guards beside it as they were last read, and what was worked out of them. */
export interface DrawerView {
  readonly drawer: KeptDrawer;
  readonly guards: readonly DrawerGuard[];
  /** Undefined until the first answer. */
  readonly told: DrawerTold | undefined;
}

/** What the drawer's panel shows, and what changes it. */
export class DrawerDesk {
  readonly bench: Bench;
  /** Whether the browser keeps it beyond this visit. */
  readonly lasts: boolean;
  view: DrawerView = { drawer: EMPTY_DRAWER, guards: [], told: undefined };
  readonly #keeper: DrawerKeeper;
  readonly #latest = latestOnly();
  readonly #onList = new Map<string, boolean>();
  readonly #watchers: ((view: DrawerView) => void)[] = [];
  readonly #tell: (fault: string) => void;

  /** @param tell says what went wrong; nothing once it is right again */
  constructor(bench: Bench, keeper: DrawerKeeper, tell: (fault: string) => void) {
    this.bench = bench;
    this.lasts = keeper.lasts;
    this.#keeper = keeper;
    this.#tell = tell;
  }

  watch(effect: (view: DrawerView) => void): void {
    this.#watchers.push(effect);
  }

  /** Changes what is kept; everybody hears of it, and the view is read anew. @returns whether it was kept */
  async edit(change: (drawer: KeptDrawer) => KeptDrawer): Promise<boolean> {
    try {
      await this.#keeper.edit(change);
      this.#tell("");
      return true;
    } catch (error) {
      this.#tell((error as Error).message);
      return false;
    }
  }

  shopFor(id: string, isOnList: boolean): void {
    this.#onList.set(id, isOnList);
    void this.refresh();
  }

  /** The parts of a guard on the shelf as the drawer takes them; undefined where that is told to be wrong. */
  async partsOf(id: string): Promise<{ uncounted: PartsFor[]; counted: PartsFor[] } | undefined> {
    try {
      const drawer = await this.#keeper.read();
      const kept = await (await openShelf()).get(id);
      const beside = await guardsBeside(this.bench.store.state, drawer, this.#onList);
      const index = beside.findIndex((guard) => guard.id === id);
      if (!kept || index < 0) throw new Error("This guard is no longer on the shelf.");
      const asked = { drawer: drawerInput(drawer), guards: asksOf(beside), index, readings: kept.readings };
      const reply = await benchEngineOf(this.bench.store).guardParts(asked);
      if ("faults" in reply) throw new Error(faultLine(reply.faults));
      const named = (told: readonly PartsTold[]) =>
        told.map((each) => ({ ...each, item: each.item === undefined ? undefined : drawer.items[each.item]?.id }));
      return { uncounted: named(reply.uncounted), counted: named(reply.counted) };
    } catch (error) {
      this.#tell((error as Error).message);
      return undefined;
    }
  }

  /** As the service's calls take it. */
  get asked() {
    const { drawer, guards } = this.view;
    const soldered = guards.filter(({ isCounted }) => isCounted).map(({ file }) => parseJson(file));
    return { drawer: drawerInput(drawer), soldered };
  }

  async refresh(): Promise<void> {
    const isLatest = this.#latest();
    try {
      const drawer = await this.#keeper.read();
      const guards = await guardsBeside(this.bench.store.state, drawer, this.#onList);
      const asked = { drawer: drawerInput(drawer), guards: asksOf(guards) };
      const reply = await benchEngineOf(this.bench.store).drawer(asked);
      if (!isLatest()) return;
      if ("faults" in reply) this.#tell(faultLine(reply.faults));
      this.view = { drawer, guards, told: "told" in reply ? reply.told : undefined };
      for (const effect of this.#watchers) effect(this.view);
    } catch (error) {
      if (isLatest()) this.#tell((error as Error).message);
    }
  }
}

export async function openDrawerDesk(bench: Bench, tell: (fault: string) => void): Promise<DrawerDesk> {
  const keeper = await openDrawer();
  const desk = new DrawerDesk(bench, keeper, tell);
  keeper.subscribe(() => void desk.refresh());
  (await openShelf()).subscribe(() => void desk.refresh());
  return desk;
}
