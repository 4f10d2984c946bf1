import type { Guard, GuardLine } from "../../shelf/guard.ts";
import { h } from "../dom/element.ts";
import { createGuardCard, type GuardCard } from "./card/guard-card.ts";
import type { ShelfDesk } from "./desk.ts";

interface OneActions {
  /** Something is shown, or nothing any more. @param id of the guard that was left for the list */
  shown(isShown: boolean, id?: string): void;
  open(line: Pick<GuardLine, "id" | "name">): void;
  remove(ids: readonly string[]): void;
  told(words: string): void;
  failed(error: unknown, unkept?: readonly Guard[]): void;
  /** Leaves the shelf for the bench. */
  leave(): void;
}

const DELETED = "This guard was deleted, perhaps in another tab; a change made here brings it back.";

/** The place where one guard is shown whole. */
export class OneGuard {
  readonly element = h("div", { hidden: true });
  readonly #desk: ShelfDesk;
  readonly #actions: OneActions;
  #card: GuardCard | undefined;
  /** What is said stays until something else is to be said; this alone goes when it is no longer so. */
  #isToldGone = false;

  constructor(desk: ShelfDesk, actions: OneActions) {
    this.#desk = desk;
    this.#actions = actions;
  }

  put(guard: Guard): void {
    const { open, remove, told, failed, leave, shown } = this.#actions;
    told("");
    this.#isToldGone = false;
    this.#card = createGuardCard(this.#desk, guard, {
      close: () => this.#close(true),
      open,
      duplicate: (each) => void this.#duplicate(each),
      remove: ({ id }) => {
        this.#close(false);
        remove([id]);
      },
      told: (words) => {
        if (words !== "") told(words);
      },
      failed,
      leave,
    });
    this.element.replaceChildren(this.#card.element);
    this.element.hidden = false;
    shown(true);
    this.#card.element.querySelector<HTMLElement>("h3")!.focus();
  }

  /** Writes what was typed and is not written yet. */
  flush(): void {
    this.#card?.flush();
  }

  /** Shows the guard as it is kept now. */
  async renew(): Promise<void> {
    const card = this.#card;
    if (!card) return;
    const guard = await this.#desk.shelf.get(card.id);
    if (this.#card !== card) return;
    if (guard) card.show(guard);
    if (guard ? this.#isToldGone : !this.#isToldGone) this.#actions.told(guard ? "" : DELETED);
    this.#isToldGone = !guard;
  }

  #close(isFocused: boolean): void {
    const { id } = this.#card!;
    this.flush();
    this.#card = undefined;
    this.element.hidden = true;
    this.element.replaceChildren();
    this.#actions.told("");
    this.#actions.shown(false, isFocused ? id : undefined);
  }

  async #duplicate(guard: Guard): Promise<void> {
    try {
      this.flush();
      const copy = await this.#desk.duplicate(guard);
      this.put(copy);
      this.#actions.told(`This is the copy: “${copy.name}”.`);
    } catch (error) {
      this.#actions.failed(error);
    }
  }
}
