import { partWords } from "../../build-file/words/part-words.ts";
import { faultLine } from "../../errors.ts";
import type { GuardState } from "../../shelf/guard.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { h, replaceContent } from "../dom/element.ts";
import { latestOnly } from "../dom/later.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { DrawerReply, DrawerTold } from "../engine/drawer-told.ts";
import { formChoice, formText } from "../fields/form-fields.ts";
import { createFormRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import { openShelf } from "../shelf/open-shelf.ts";
import type { Bench } from "../start/bench.ts";
import { openBuild } from "../start/open-build.ts";
import { parseJson } from "../start/parse-json.ts";
import { keptAs } from "../state/kept-as.ts";
import type { BuildSource } from "../state/reading.ts";
import { buildableView } from "./buildable-answer.ts";
import { changeView } from "./change-answer.ts";
import { createDrawerFiles } from "./drawer-files.ts";
import { type DrawerKeeper, openDrawer } from "./drawer-keeper.ts";
import { createEntryRows } from "./entry-rows.ts";
import { type DrawerGuard, guardsTable } from "./guards-table.ts";
import { drawerInput, EMPTY_DRAWER, type KeptDrawer } from "./kept-drawer.ts";
import { createKitsAndReels, kitWords } from "./kits-and-reels.ts";
import { createPartForm, type NewEntry } from "./part-form.ts";
import { shoppingView } from "./shopping-view.ts";

const SOLDERED: readonly GuardState[] = ["wired", "in the guitar"];
const ON_BENCH = "bench";

/** The person's parts, and what can be done with them. */
class DrawerPanel {
  readonly element: HTMLElement;
  readonly #bench: Bench;
  readonly #keeper: DrawerKeeper;
  readonly #leave: () => void;
  readonly #said = h("p", { class: "hint", role: "status" });
  readonly #fault = h("p", { class: "fault-text", role: "alert", hidden: true });
  readonly #into = formChoice("into", "Goes into", [{ value: "", label: "the drawer" }]);
  readonly #currency = formText("currency", "Prices are in", "", "my own money");
  readonly #rows = createEntryRows((change) => void this.#edit(change), (words) => this.#say(words));
  readonly #kits = createKitsAndReels((change) => void this.#edit(change));
  readonly #guardsAt = h("div", {});
  readonly #shoppingAt = h("div", { class: "stack" });
  readonly #latest = latestOnly();
  readonly #onList = new Map<string, boolean>();
  #drawer: KeptDrawer = EMPTY_DRAWER;
  #guards: readonly DrawerGuard[] = [];
  #told: DrawerTold | undefined;

  constructor(bench: Bench, keeper: DrawerKeeper, leave: () => void) {
    this.#bench = bench;
    this.#keeper = keeper;
    this.#leave = leave;
    this.#currency.element.addEventListener("change", () => {
      const currency = this.#currency.read().slice(0, 12);
      void this.#edit((drawer) => ({ ...drawer, currency }));
    });
    const files = createDrawerFiles(
      () => this.#drawer,
      (drawer) => this.#edit(() => drawer),
      async (drawer) => faultsOf(await benchEngineOf(bench.store).drawer({ drawer, guards: [] })),
      (words) => this.#say(words),
    );
    const change = createFormRun("Find the changes that are heard", () => [], () => this.#heardChanges());
    const build = createFormRun("What can I build", () => [], () => this.#buildable());
    this.element = h(
      "div",
      { class: "stack drawer" },
      !keeper.lasts &&
        h("p", { class: "caution" }, "This browser stores nothing for this page: the drawer is there until the page is closed. Save it as a file."),
      this.#said,
      this.#fault,
      section(
        "What is in the drawer",
        "Count all that you own, soldered in or not: what guards hold is taken off below. What you do not own and know the price of has the count 0.",
        createPartForm(() => bench.store.state.source, this.#into, (entry) => this.#add(entry)),
        this.#rows.element,
        h("h4", {}, "Kits and wire"),
        this.#kits.element,
        h("div", { class: "field-row" }, this.#currency.element, files),
      ),
      section(
        "Guards against the drawer",
        "Parts soldered into a guard that is wired or in the guitar are not free, until it is taken apart. A measured part serves within the tolerance of the one wanted.",
        this.#guardsAt,
      ),
      section("Shopping list", "All ticked guards together; kits and single parts at the least sum of known prices.", this.#shoppingAt),
      section(
        "The cheapest change that is heard",
        "Each part of the guard on the bench exchanged for each that lies free in the drawer or has a price.",
        h("div", { class: "buttons" }, change.button),
        change.answer,
      ),
      section(
        "What can I build from this drawer",
        "Every guard that the free parts allow, by the sounds it has; the service tries them, which may take a minute.",
        h("div", { class: "buttons" }, build.button),
        build.answer,
      ),
    );
  }

  #say(words: string): void {
    this.#said.textContent = words;
  }

  #tell(message: string): void {
    this.#fault.textContent = message;
    this.#fault.hidden = message === "";
  }

  async #edit(change: (drawer: KeptDrawer) => KeptDrawer): Promise<void> {
    try {
      await this.#keeper.edit(change);
      this.#tell("");
    } catch (error) {
      this.#tell((error as Error).message);
    }
  }

  async #add(entry: NewEntry): Promise<void> {
    const id = crypto.randomUUID();
    const kit = this.#into.read();
    if (entry.kind === "reel")
      return this.#edit((drawer) => ({ ...drawer, wires: [...drawer.wires, { ...entry.reel, id }] }));
    const { item } = entry;
    if (kit === "") return this.#edit((drawer) => ({ ...drawer, items: [...drawer.items, { ...item, id }] }));
    const content = { part: item.part, count: Math.max(1, item.count ?? 1) };
    return this.#edit((drawer) => ({
      ...drawer,
      kits: drawer.kits.map((each) => (each.id === kit ? { ...each, content: [...each.content, content] } : each)),
    }));
  }

  /** The guards of the shelf, and the one on the bench where it is not one of them. */
  async #readGuards(counted: KeptDrawer["counted"]): Promise<readonly DrawerGuard[]> {
    const shelf = await openShelf();
    const { guard, reading } = this.#bench.store.state;
    const kept = (await shelf.getAll()).map(({ id, name, state, file }) => ({ id, name, state, file }));
    const isKept = kept.some(({ id }) => id === keptAs(guard));
    const bench =
      reading && !isKept
        ? [{ id: ON_BENCH, name: "the guard on the bench", state: "on the bench" as const, file: JSON.stringify(reading.source) }]
        : [];
    return [...bench, ...kept].map((each) => {
      const isSoldered = each.state !== "on the bench" && SOLDERED.includes(each.state);
      const isCounted = counted[each.id] ?? isSoldered;
      const wanted = each.state === "wanted" || each.state === "on the bench";
      return { ...each, isCounted, isOnList: this.#onList.get(each.id) ?? wanted };
    });
  }

  async refresh(): Promise<void> {
    const isLatest = this.#latest();
    try {
      const drawer = await this.#keeper.read();
      const guards = await this.#readGuards(drawer.counted);
      const asked = guards.map(({ name, file, isCounted, isOnList }) => ({ name, file, isSoldered: isCounted, isOnList }));
      const reply = await benchEngineOf(this.#bench.store).drawer({ drawer: drawerInput(drawer), guards: asked });
      if (!isLatest()) return;
      [this.#drawer, this.#guards] = [drawer, guards];
      if ("told" in reply) this.#told = reply.told;
      else this.#tell(faultsOf(reply));
      this.#show();
    } catch (error) {
      if (isLatest()) this.#tell((error as Error).message);
    }
  }

  #show(): void {
    const [drawer, told] = [this.#drawer, this.#told];
    this.#rows.show(drawer, told);
    this.#kits.show(drawer, (kit) => kitWords(told, drawer.kits.indexOf(kit)));
    const select = this.#into.element.querySelector("select")!;
    const chosen = select.value;
    replaceContent(
      select,
      h("option", { value: "" }, "the drawer"),
      drawer.kits.map(({ id, name }) => h("option", { value: id }, `the kit “${name}”`)),
    );
    select.value = drawer.kits.some(({ id }) => id === chosen) ? chosen : "";
    const currency = this.#currency.element.querySelector("input")!;
    if (document.activeElement !== currency) currency.value = drawer.currency;
    if (!told) return;
    const ticks = {
      count: (id: string, isCounted: boolean) =>
        void this.#edit((kept) => ({ ...kept, counted: { ...kept.counted, [id]: isCounted } })),
      list: (id: string, isOnList: boolean) => {
        this.#onList.set(id, isOnList);
        void this.refresh();
      },
    };
    const focused = (document.activeElement as HTMLElement | null)?.closest("label")?.getAttribute("aria-label");
    replaceContent(this.#guardsAt, guardsTable(this.#guards, told.guards, ticks));
    if (focused) this.#guardsAt.querySelector<HTMLElement>(`label[aria-label="${CSS.escape(focused)}"] input`)?.focus();
    replaceContent(this.#shoppingAt, shoppingView(told.shopping, drawer.currency, (words) => this.#say(words)));
  }

  #asked() {
    const soldered = this.#guards.filter(({ isCounted }) => isCounted).map(({ file }) => parseJson(file));
    return { drawer: drawerInput(this.#drawer), soldered };
  }

  async #heardChanges(): Promise<HTMLElement | undefined> {
    const { store, editor } = this.#bench;
    const { reading } = store.state;
    if (!reading) return undefined;
    const words = partWords(reading.build.parts);
    const answer = await postJson("/api/heard-change", { build: reading.source, ...this.#asked() });
    return changeView(answer, (name) => words.get(name) ?? name, this.#drawer.currency, (build) => {
      void editor.edit((source) => ({ ...source, parts: build.parts, wires: build.wires }) as BuildSource);
      store.set({ notice: "The change is on the bench; Undo takes it back." });
      this.#leave();
    });
  }

  async #buildable(): Promise<HTMLElement> {
    const { store } = this.#bench;
    const answer = await postJson("/api/buildable", this.#asked());
    return buildableView(answer, async ({ plan, says }) => {
      const title = `From the drawer: ${says[0]!.toLowerCase()}`.slice(0, 200);
      if (!(await openBuild(this.#bench, { presolder: 1, title, plan }))) return;
      store.set({ story: undefined, notice: "On the bench: a guard from the drawer. Undo brings back the one before." });
      this.#leave();
    });
  }
}

const faultsOf = (reply: DrawerReply) => ("faults" in reply ? faultLine(reply.faults) : "");

function section(title: string, hint: string, ...content: (Node | string)[]): HTMLElement {
  return h("section", { class: "stack", "aria-label": title }, h("h3", {}, title), h("p", { class: "hint" }, hint), content);
}

/** @param leave closes the shelf, for the bench */
export async function createDrawerPanel(bench: Bench, leave: () => void): Promise<HTMLElement> {
  bringStyle("drawer.css");
  const keeper = await openDrawer();
  const panel = new DrawerPanel(bench, keeper, leave);
  keeper.subscribe(() => void panel.refresh());
  (await openShelf()).subscribe(() => void panel.refresh());
  panel.element.addEventListener("shown", () => void panel.refresh());
  await panel.refresh();
  return panel.element;
}
