import type { Guard } from "../../../shelf/guard.ts";
import { h, replaceContent } from "../../dom/element.ts";
import type { ShelfDesk } from "../desk.ts";

/** Deletes guards, and offers to put them back as they were. */
export class DeletedNotice {
  readonly element = h("div", { class: "shelf-deleted", role: "status" });
  readonly #desk: ShelfDesk;
  readonly #failed: (error: unknown, unkept: readonly Guard[]) => void;

  constructor(desk: ShelfDesk, failed: (error: unknown, unkept: readonly Guard[]) => void) {
    this.#desk = desk;
    this.#failed = failed;
  }

  async remove(ids: readonly string[]): Promise<void> {
    const { shelf } = this.#desk;
    try {
      const guards = await shelf.getAll(ids);
      await shelf.remove(ids);
      this.#offer(guards);
    } catch (error) {
      this.#failed(error, []);
    }
  }

  #offer(guards: readonly Guard[]): void {
    const [only] = guards;
    if (!only) return;
    const what = guards.length === 1 ? `“${only.name}”` : `${guards.length} guards`;
    const undo = h("button", { type: "button", onclick: () => void this.#undo(guards, what) }, "Undo");
    replaceContent(this.element, h("span", {}, `Deleted ${what}, until this page is closed.`), undo);
    undo.focus();
  }

  async #undo(guards: readonly Guard[], what: string): Promise<void> {
    try {
      await this.#desk.shelf.put(guards);
      replaceContent(
        this.element,
        h("span", {}, `${what} is back on the shelf.`.replace(/^(\d+ guards) is/, "$1 are")),
      );
    } catch (error) {
      this.#failed(error, guards);
    }
  }
}
