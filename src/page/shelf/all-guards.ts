import type { Guard, GuardLine } from "../../shelf/guard.ts";
import { found } from "../../shelf/search.ts";
import { h } from "../dom/element.ts";
import { createCarryBar } from "./carry/carry-bar.ts";
import { TakeIn } from "./carry/take-in.ts";
import type { ShelfDesk } from "./desk.ts";
import { GuardList } from "./list/guard-list.ts";
import { createSearchField } from "./list/search-field.ts";
import { Selection } from "./list/selection.ts";

interface AllActions {
  /** Shows all that is kept of a guard. */
  show(line: GuardLine): void;
  /** Puts it on the bench. */
  open(line: GuardLine): void;
  remove(ids: readonly string[]): void;
  failed(error: unknown, unkept?: readonly Guard[]): void;
}

const NOTHING =
  "Nothing on the shelf yet. “Keep on the shelf” above keeps the guard on the bench; a shelf file or a build file can be opened here.";

function countWords(shown: number, all: number): string {
  if (all === 0) return NOTHING;
  return shown === all ? `${all} ${all === 1 ? "guard" : "guards"}` : `${shown} of ${all} guards`;
}

/** The guards as one looks for them, ticks them and carries them elsewhere. */
export class AllGuards {
  readonly element: HTMLElement;
  readonly takeIn: TakeIn;
  readonly #count = h("p", { class: "hint", "aria-live": "polite" });
  readonly #search = createSearchField(() => this.#show(true));
  readonly #selection = new Selection(() => this.#selected());
  readonly #list: GuardList;
  readonly #carry: ReturnType<typeof createCarryBar>;
  #lines: readonly GuardLine[] = [];
  #isWhole = false;

  constructor(desk: ShelfDesk, { show, open, remove, failed }: AllActions) {
    this.#list = new GuardList(desk.bench, (id) => this.#selection.has(id), {
      show,
      open,
      select: ({ id }, isSelected) => this.#selection.set([id], isSelected),
    });
    this.takeIn = new TakeIn(desk, failed);
    this.#carry = createCarryBar(desk, {
      found: () => this.#found().map(({ id }) => id),
      selection: this.#selection,
      takeIn: this.takeIn,
      remove,
      failed,
    });
    this.element = h(
      "div",
      { class: "stack" },
      this.#search.element,
      this.#carry.element,
      this.takeIn.element,
      this.#count,
      this.#list.element,
    );
  }

  /** @param isWhole whether these are all guards of the shelf, or only those that are seen first */
  show(lines: readonly GuardLine[], isWhole: boolean): void {
    this.#lines = lines;
    this.#isWhole = isWhole;
    if (isWhole) this.#selection.keepOnly(lines);
    this.#show(false);
  }

  focusOn(id: string): void {
    this.#list.focusOn(id);
  }

  #found(): readonly GuardLine[] {
    return found(this.#lines, this.#search.read());
  }

  #show(isAnew: boolean): void {
    const lines = this.#found();
    this.#list.show(lines, isAnew);
    this.#count.textContent = this.#isWhole ? countWords(lines.length, this.#lines.length) : "Reading the shelf…";
    this.#showCarry(lines);
  }

  #selected(): void {
    this.#list.showSelection();
    this.#showCarry(this.#found());
  }

  #showCarry(lines: readonly GuardLine[]): void {
    this.#carry.show(lines.length, this.#lines.length, this.#isWhole);
  }
}
