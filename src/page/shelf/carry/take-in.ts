import type { ShelfRead } from "../../../shelf/file/read-shelf-file.ts";
import type { Guard } from "../../../shelf/guard.ts";
import { joinedHistory, type Merge, mergeOf } from "../../../shelf/merge.ts";
import { h, replaceContent } from "../../dom/element.ts";
import type { ShelfDesk } from "../desk.ts";
import { clashList } from "./clash-list.ts";
import { drawerFaultLine, faultList, resultWords } from "./take-words.ts";

/** Puts on the shelf what comes from a file or link, and says what became of it. */
export class TakeIn {
  readonly element = h("div", { class: "take-in stack", hidden: true });
  readonly #desk: ShelfDesk;
  readonly #failed: (error: unknown, unkept: readonly Guard[]) => void;

  constructor(desk: ShelfDesk, failed: (error: unknown, unkept: readonly Guard[]) => void) {
    this.#desk = desk;
    this.#failed = failed;
  }

  /** @param from what they came from, for the person */
  async take(read: ShelfRead, from: string): Promise<void> {
    const { shelf } = this.#desk;
    try {
      const merge = mergeOf(await shelf.getAll(), read.guards);
      await this.#keep(merge);
      this.#show(read, merge, from, await this.#drawer(read));
    } catch (error) {
      this.#failed(error, read.guards);
    }
  }

  async #keep({ added, grown }: Merge): Promise<void> {
    const { shelf } = this.#desk;
    await shelf.add(added);
    for (const { id, history } of grown)
      await shelf.change(id, (now) => ({ ...now, history: joinedHistory(now.history, history) }));
  }

  /** What became of the drawer that came along. */
  async #drawer({ drawer, drawerFault }: ShelfRead): Promise<HTMLElement | false> {
    if (drawerFault) return drawerFaultLine(drawerFault);
    if (!drawer) return false;
    const { comeDrawer } = await import("../../drawer/come-drawer.ts");
    return comeDrawer(this.#desk.bench.store, drawer, (error) => this.#failed(error, []));
  }

  #show(read: ShelfRead, merge: Merge, from: string, drawer: HTMLElement | false): void {
    const close = () => {
      this.element.hidden = true;
      replaceContent(this.element);
    };
    const isNothing = merge.clashes.length === 0 && !drawer;
    const words = resultWords(merge) || (isNothing ? "nothing new." : "");
    replaceContent(
      this.element,
      h("p", { role: "status" }, `From ${from}: ${words}`),
      faultList(read),
      drawer,
      clashList({ shelf: this.#desk.shelf, failed: this.#failed }, merge.clashes),
      h("div", { class: "buttons" }, h("button", { type: "button", class: "quiet", onclick: close }, "Close this")),
    );
    this.element.hidden = false;
  }
}
