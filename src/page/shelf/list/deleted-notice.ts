import type { Guard } from "../../../shelf/guard.ts";
import { h, replaceContent } from "../../dom/element.ts";
import type { ShelfDesk } from "../desk.ts";

function named(guards: readonly Guard[]): string {
  return guards.length === 1 ? `“${guards[0]!.name}”` : `${guards.length} guards`;
}

/** Deletes guards, and offers to put them back as they were, the last deleted first. */
export class DeletedNotice {
  readonly element = h("div", { class: "shelf-deleted", role: "status" });
  readonly #desk: ShelfDesk;
  readonly #failed: (error: unknown, unkept: readonly Guard[]) => void;
  readonly #deleted: (readonly Guard[])[] = [];

  constructor(desk: ShelfDesk, failed: (error: unknown, unkept: readonly Guard[]) => void) {
    this.#desk = desk;
    this.#failed = failed;
  }

  async remove(ids: readonly string[]): Promise<void> {
    const { shelf } = this.#desk;
    try {
      const guards = await shelf.getAll(ids);
      await shelf.remove(ids);
      if (guards.length === 0) return;
      this.#deleted.push(guards);
      this.#show("")?.focus();
    } catch (error) {
      this.#failed(error, []);
    }
  }

  /** @returns what brings back those that were deleted last, if any */
  #show(told: string): HTMLElement | undefined {
    const last = this.#deleted.at(-1);
    const undo = last && h("button", { type: "button", onclick: () => void this.#undo() }, "Undo");
    const words = last && `Deleted ${named(last)}; until this page is closed it can be undone.`;
    replaceContent(this.element, h("span", {}, [told, words].filter(Boolean).join(" ")), undo);
    return undo;
  }

  async #undo(): Promise<void> {
    const guards = this.#deleted.pop();
    if (!guards) return;
    try {
      // One that came back by a change made in another tab has that change.
      await this.#desk.shelf.add(guards);
      this.#show(`${named(guards)} ${guards.length === 1 ? "is" : "are"} back on the shelf.`);
    } catch (error) {
      this.#deleted.push(guards);
      this.#failed(error, guards);
    }
  }
}
