import { newId } from "../../shelf/new-guard.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { Bench } from "../start/bench.ts";
import { DrawerDesk } from "./drawer-desk.ts";
import { openDrawer } from "./drawer-keeper.ts";
import { type PartsFor, type Taken, takeIn, withoutTaken, withTaken } from "./taken-parts.ts";

const sumOf = (told: readonly PartsFor[]) => told.reduce((sum, { count }) => sum + count, 0);
const partsIn = (count: number) => (count === 1 ? "1 part" : `${count} parts`);
const listed = (told: readonly PartsFor[]) => told.map(({ count, what }) => `${count} × ${what}`).join(", ");

/** Puts a guard's parts into the drawer's count, each once, and says what became of them. */
export class TakeParts {
  readonly element = h("div", { class: "stack", role: "status" });
  readonly #desk: DrawerDesk;

  constructor(desk: DrawerDesk) {
    this.#desk = desk;
  }

  /** @param id of a guard on the shelf */
  async take(id: string, name: string): Promise<void> {
    const told = await this.#desk.partsOf(id);
    if (!told) return;
    const { uncounted, counted } = told;
    const head =
      uncounted.length === 0
        ? `No part of “${name}” was taken in: the drawer has as many of each already.`
        : `Taken in of “${name}”: ${listed(uncounted)}.`;
    const taken = await this.#count(uncounted);
    if (!taken) return;
    const count = sumOf(counted);
    if (count === 0) return this.#say(head, name, [taken]);
    const doubt = `The drawer counted ${partsIn(count)} such as it has before (${listed(counted)}): these may be the very ones, and were not counted again.`;
    this.#say(`${head} ${doubt}`, name, [taken], async () => {
      const rest = await this.#count(counted);
      if (rest) this.#say(`Counted besides, of “${name}”: ${listed(counted)}.`, name, [rest, taken]);
    });
  }

  /** @returns undefined where the browser kept it not */
  async #count(parts: readonly PartsFor[]): Promise<Taken | undefined> {
    if (parts.length === 0) return [];
    let taken: Taken = [];
    const isKept = await this.#desk.edit((drawer) => {
      taken = takeIn(drawer, parts, newId);
      return withTaken(drawer, taken);
    });
    return isKept ? taken : undefined;
  }

  /** @param latest what was taken in, the latest first @param rest takes in what may be counted there already */
  #say(words: string, name: string, latest: readonly Taken[], rest?: () => Promise<void>): void {
    const undo = async () => {
      for (const each of latest) await this.#desk.edit((drawer) => withoutTaken(drawer, each));
      replaceContent(this.element, h("p", {}, `The parts of “${name}” are out of the drawer again.`));
    };
    const button = (label: string, act: () => Promise<void>) =>
      h("button", { type: "button", onclick: () => void act() }, label);
    replaceContent(
      this.element,
      h("p", {}, words),
      h(
        "div",
        { class: "buttons" },
        rest && button("They are others: count them too", rest),
        latest.some(({ length }) => length > 0) && button("Undo taking them in", undo),
      ),
    );
  }
}

/** For a place that shows no drawer. @param tell says what went wrong */
export async function openTakeParts(bench: Bench, tell: (fault: string) => void): Promise<TakeParts> {
  return new TakeParts(new DrawerDesk(bench, await openDrawer(), tell));
}
