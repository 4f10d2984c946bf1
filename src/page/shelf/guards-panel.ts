import type { ShelfRead } from "../../shelf/file/read-shelf-file.ts";
import type { Guard, GuardLine } from "../../shelf/guard.ts";
import { found } from "../../shelf/search.ts";
import { h } from "../dom/element.ts";
import type { Bench } from "../start/bench.ts";
import { createGuardCard, type GuardCard } from "./card/guard-card.ts";
import { createCarryBar } from "./carry/carry-bar.ts";
import { TakeIn } from "./carry/take-in.ts";
import { ShelfDesk } from "./desk.ts";
import { createFaultNotice } from "./fault-notice.ts";
import { DeletedNotice } from "./list/deleted-notice.ts";
import { GuardList } from "./list/guard-list.ts";
import { createSearchField } from "./list/search-field.ts";
import { Selection } from "./list/selection.ts";
import { shelfWithStorage } from "./open-shelf.ts";
import { createStorageNote } from "./storage-note.ts";

/** The guards on the shelf: to find, open, write on, carry elsewhere. */
export class GuardsPanel {
  readonly element: HTMLElement;
  readonly #desk: ShelfDesk;
  readonly #leave: () => void;
  readonly #fault = createFaultNotice();
  readonly #told = h("p", { class: "hint", role: "status" });
  readonly #count = h("p", { class: "hint", "aria-live": "polite" });
  readonly #search = createSearchField(() => this.#showList(true));
  readonly #selection = new Selection(() => this.#selected());
  readonly #list: GuardList;
  readonly #deleted: DeletedNotice;
  readonly #carry: ReturnType<typeof createCarryBar>;
  readonly #takeIn: TakeIn;
  readonly #all: HTMLElement;
  readonly #one = h("div", { hidden: true });
  #lines: readonly GuardLine[] = [];
  #card: GuardCard | undefined;
  #isReading = false;
  #isDue = false;

  constructor(desk: ShelfDesk, storageNote: HTMLElement, leave: () => void) {
    this.#desk = desk;
    this.#leave = leave;
    const failed = (error: unknown, unkept: readonly Guard[] = []) => this.#fault.tell(error, unkept);
    this.#list = new GuardList(desk.bench, (id) => this.#selection.has(id), {
      show: (line) => void this.#showCard(line.id),
      open: (line) => void this.#open(line),
      select: ({ id }, isSelected) => this.#selection.set([id], isSelected),
    });
    this.#deleted = new DeletedNotice(desk, failed);
    this.#takeIn = new TakeIn(desk, failed);
    this.#carry = createCarryBar(desk, {
      found: () => found(this.#lines, this.#search.read()).map(({ id }) => id),
      selection: this.#selection,
      takeIn: this.#takeIn,
      remove: (ids) => void this.#deleted.remove(ids),
      failed,
    });
    this.#all = h(
      "div",
      { class: "stack" },
      this.#search.element,
      this.#carry.element,
      this.#takeIn.element,
      this.#count,
      this.#list.element,
    );
    this.element = h(
      "div",
      { class: "stack" },
      storageNote,
      this.#fault.element,
      this.#deleted.element,
      this.#told,
      this.#all,
      this.#one,
    );
    desk.shelf.subscribe(() => void this.refresh());
    addEventListener("pagehide", () => this.#card?.flush());
  }

  /** Puts guards on the shelf as far as they do not clash, and asks about the others. @param from for the person */
  take(read: ShelfRead, from: string): Promise<void> {
    return this.#takeIn.take(read, from);
  }

  /** Reads the shelf anew; of several wishes at a time one is enough. */
  async refresh(): Promise<void> {
    this.#isDue = this.#isReading;
    if (this.#isReading) return;
    this.#isReading = true;
    try {
      this.#lines = await this.#desk.shelf.list();
      this.#selection.keepOnly(this.#lines);
      this.#showList(false);
      await this.#renewCard();
    } catch (error) {
      this.#fault.tell(error);
    } finally {
      this.#isReading = false;
      if (this.#isDue) void this.refresh();
    }
  }

  #showList(isAnew: boolean): void {
    const lines = found(this.#lines, this.#search.read());
    this.#list.show(lines, isAnew);
    const all = this.#lines.length;
    this.#count.textContent =
      all === 0
        ? "Nothing on the shelf yet. “Keep on the shelf” above keeps the guard on the bench; a shelf file or a build file can be opened here."
        : lines.length === all
          ? `${all} ${all === 1 ? "guard" : "guards"}`
          : `${lines.length} of ${all} guards`;
    this.#carry.show(lines.length, all);
  }

  #selected(): void {
    this.#list.showSelection();
    this.#carry.show(found(this.#lines, this.#search.read()).length, this.#lines.length);
  }

  async #open(line: Pick<GuardLine, "id" | "name">): Promise<void> {
    try {
      this.#card?.flush();
      await this.#desk.open(line);
      this.#leave();
    } catch (error) {
      this.#fault.tell(error);
    }
  }

  async #showCard(id: string): Promise<void> {
    try {
      const guard = await this.#desk.shelf.get(id);
      if (guard) this.#put(guard);
      else await this.refresh();
    } catch (error) {
      this.#fault.tell(error);
    }
  }

  #put(guard: Guard): void {
    this.#told.textContent = "";
    this.#fault.clear();
    this.#card = createGuardCard(this.#desk, guard, {
      close: () => this.#close(),
      open: (each) => void this.#open(each),
      duplicate: (each) => void this.#duplicate(each),
      remove: ({ id }) => {
        this.#close(false);
        void this.#deleted.remove([id]);
      },
      told: (words) => {
        if (words !== "") this.#told.textContent = words;
      },
      failed: (error, unkept) => this.#fault.tell(error, unkept),
      leave: this.#leave,
    });
    this.#one.replaceChildren(this.#card.element);
    this.#one.hidden = false;
    this.#all.hidden = true;
    this.#card.element.querySelector<HTMLElement>("h3")!.focus();
  }

  #close(isFocused = true): void {
    const { id } = this.#card!;
    this.#card!.flush();
    this.#card = undefined;
    this.#one.hidden = true;
    this.#one.replaceChildren();
    this.#all.hidden = false;
    this.#told.textContent = "";
    if (isFocused) this.#list.focusOn(id);
  }

  async #duplicate(guard: Guard): Promise<void> {
    try {
      this.#card?.flush();
      const copy = await this.#desk.duplicate(guard);
      this.#put(copy);
      this.#told.textContent = `This is the copy: “${copy.name}”.`;
    } catch (error) {
      this.#fault.tell(error);
    }
  }

  async #renewCard(): Promise<void> {
    if (!this.#card) return;
    const guard = await this.#desk.shelf.get(this.#card.id);
    if (guard) this.#card?.show(guard);
    else this.#told.textContent = "This guard was deleted, perhaps in another tab; a change made here brings it back.";
  }
}

export async function createGuardsPanel(bench: Bench, leave: () => void): Promise<GuardsPanel> {
  const open = await shelfWithStorage();
  const panel = new GuardsPanel(new ShelfDesk(bench, open.shelf), createStorageNote(open), leave);
  await panel.refresh();
  return panel;
}
