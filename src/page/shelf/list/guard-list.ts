import type { GuardLine } from "../../../shelf/guard.ts";
import { h, replaceContent } from "../../dom/element.ts";
import type { Bench } from "../../start/bench.ts";
import { guardRow, type RowActions } from "./guard-row.ts";
import { ThumbDesk } from "./thumb-desk.ts";

/** The first screen's rows, for which nobody waits longer than need be. */
export const FIRST_ROWS = 12;
/** Some screens more, whenever one comes to their end. */
const MORE_ROWS = 30;

interface KeptRow {
  readonly line: GuardLine;
  readonly element: HTMLLIElement;
}

const isSameLine = (a: GuardLine, b: GuardLine) => a === b || JSON.stringify(a) === JSON.stringify(b);

/** The guards as a list whose rows are made as they are come to, and stay as they are while others are looked for. */
export class GuardList {
  readonly element = h("div", { class: "stack" });
  readonly #list = h("ul", { class: "shelf-list", "aria-label": "Guards on the shelf" });
  readonly #more = h("button", { type: "button", class: "shelf-more" });
  readonly #rows = new Map<string, KeptRow>();
  readonly #thumbs: ThumbDesk;
  readonly #actions: RowActions;
  readonly #isSelected: (id: string) => boolean;
  #lines: readonly GuardLine[] = [];
  #count = FIRST_ROWS;

  constructor(bench: Bench, isSelected: (id: string) => boolean, actions: RowActions) {
    this.#thumbs = new ThumbDesk(bench);
    this.#isSelected = isSelected;
    this.#actions = actions;
    this.#more.addEventListener("click", () => this.#grow());
    // Whoever scrolls there need not press it.
    new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting) && !this.#more.hidden) this.#grow();
    }).observe(this.#more);
    this.element.append(this.#list, this.#more);
  }

  /** @param isAnew whether to begin at the top, as for another search */
  show(lines: readonly GuardLine[], isAnew: boolean): void {
    this.#lines = lines;
    if (isAnew) this.#count = FIRST_ROWS;
    const rows = lines.slice(0, this.#count).map((line) => this.#rowOf(line));
    if (!this.#stands(rows)) this.#replace(rows);
    this.#tellMore();
  }

  /** Draws those rows anew that a selection of all or none changes. */
  showSelection(): void {
    for (const [id, { element }] of this.#rows)
      element.querySelector<HTMLInputElement>("input")!.checked = this.#isSelected(id);
  }

  focusOn(id: string): void {
    this.#rows.get(id)?.element.querySelector<HTMLElement>(".shelf-name")?.focus();
  }

  #stands(rows: readonly HTMLLIElement[]): boolean {
    const { children } = this.#list;
    return children.length === rows.length && rows.every((row, index) => row === children[index]);
  }

  #replace(rows: readonly HTMLLIElement[]): void {
    const focused = document.activeElement;
    replaceContent(this.#list, rows);
    if (focused instanceof HTMLElement && this.#list.contains(focused)) focused.focus({ preventScroll: true });
  }

  #grow(): void {
    const from = this.#count;
    const isPressed = document.activeElement === this.#more;
    this.#count += MORE_ROWS;
    const rows = this.#lines.slice(from, this.#count).map((line) => this.#rowOf(line));
    this.#list.append(...rows);
    this.#tellMore();
    if (isPressed && this.#more.hidden) rows[0]?.querySelector<HTMLElement>(".shelf-name")?.focus();
  }

  #tellMore(): void {
    const left = this.#lines.length - this.#count;
    this.#more.hidden = left <= 0;
    this.#more.textContent = `Show more (${left} left)`;
  }

  #rowOf(line: GuardLine): HTMLLIElement {
    const kept = this.#rows.get(line.id);
    if (kept && isSameLine(kept.line, line)) return kept.element;
    const element = guardRow(line, this.#thumbs.place(line), this.#isSelected(line.id), this.#actions);
    this.#rows.set(line.id, { line, element });
    return element;
  }
}
