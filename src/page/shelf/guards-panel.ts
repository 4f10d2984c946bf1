import type { ShelfRead } from "../../shelf/file/read-shelf-file.ts";
import type { Guard, GuardLine } from "../../shelf/guard.ts";
import { idle } from "../dom/breath.ts";
import { h } from "../dom/element.ts";
import type { Bench } from "../start/bench.ts";
import { AllGuards } from "./all-guards.ts";
import { ShelfDesk } from "./desk.ts";
import { createFaultNotice } from "./fault-notice.ts";
import { DeletedNotice } from "./list/deleted-notice.ts";
import { FIRST_ROWS } from "./list/guard-list.ts";
import { OneGuard } from "./one-guard.ts";
import { type OpenShelf, shelfWithStorage } from "./open-shelf.ts";
import { createRoomNote, createStorageNote } from "./storage-note.ts";

/** The guards on the shelf: to find, open, write on, carry elsewhere. */
export class GuardsPanel {
  readonly element: HTMLElement;
  readonly #desk: ShelfDesk;
  readonly #leave: () => void;
  readonly #fault = createFaultNotice();
  readonly #told = h("p", { class: "hint", role: "status" });
  readonly #all: AllGuards;
  readonly #one: OneGuard;
  #isReading = false;
  #isDue = false;

  constructor(bench: Bench, open: OpenShelf, leave: () => void) {
    this.#desk = new ShelfDesk(bench, open.shelf);
    this.#leave = leave;
    const failed = (error: unknown, unkept: readonly Guard[] = []) => this.#fault.tell(error, unkept);
    const deleted = new DeletedNotice(this.#desk, failed);
    const remove = (ids: readonly string[]) => void deleted.remove(ids);
    this.#all = new AllGuards(this.#desk, {
      show: ({ id }) => void this.#showCard(id),
      open: (line) => void this.#open(line),
      remove,
      failed,
    });
    this.#one = new OneGuard(this.#desk, {
      shown: (isShown, left) => this.#showOne(isShown, left),
      open: (line) => void this.#open(line),
      remove,
      told: (words) => {
        this.#told.textContent = words;
      },
      failed,
      leave,
    });
    this.element = h(
      "div",
      { class: "stack" },
      createStorageNote(open),
      this.#fault.element,
      deleted.element,
      this.#told,
      this.#all.element,
      this.#one.element,
      createRoomNote(open.shelf),
    );
    open.shelf.subscribe(() => void this.refresh());
    addEventListener("pagehide", () => this.#one.flush());
  }

  /** Puts guards on the shelf as far as they do not clash, and asks about the others. @param from for the person */
  take(read: ShelfRead, from: string): Promise<void> {
    return this.#all.takeIn.take(read, from);
  }

  /** Shows the first screens, and reads the others once those stand: of a large shelf they take several times as long. */
  async begin(): Promise<void> {
    try {
      const first = await this.#desk.shelf.latest(FIRST_ROWS);
      const isWhole = first.length < FIRST_ROWS;
      this.#all.show(first, isWhole);
      if (!isWhole) void idle().then(() => this.refresh());
    } catch (error) {
      this.#fault.tell(error);
    }
  }

  /** Reads the shelf anew; of several wishes at a time one is enough. */
  async refresh(): Promise<void> {
    this.#isDue = this.#isReading;
    if (this.#isReading) return;
    this.#isReading = true;
    try {
      this.#all.show(await this.#desk.shelf.list(), true);
      await this.#one.renew();
    } catch (error) {
      this.#fault.tell(error);
    } finally {
      this.#isReading = false;
      if (this.#isDue) void this.refresh();
    }
  }

  #showOne(isShown: boolean, left: string | undefined): void {
    if (isShown) this.#fault.clear();
    this.#all.element.hidden = isShown;
    if (left !== undefined) this.#all.focusOn(left);
  }

  async #open(line: Pick<GuardLine, "id" | "name">): Promise<void> {
    try {
      this.#one.flush();
      await this.#desk.open(line);
      this.#leave();
    } catch (error) {
      this.#fault.tell(error);
    }
  }

  async #showCard(id: string): Promise<void> {
    try {
      const guard = await this.#desk.shelf.get(id);
      if (guard) this.#one.put(guard);
      else await this.refresh();
    } catch (error) {
      this.#fault.tell(error);
    }
  }
}

export async function createGuardsPanel(bench: Bench, leave: () => void): Promise<GuardsPanel> {
  const panel = new GuardsPanel(bench, await shelfWithStorage(), leave);
  await panel.begin();
  return panel;
}
