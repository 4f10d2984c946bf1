import { freshId, h, replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { Path } from "../state/paths.ts";
import type { BuildSource } from "../state/reading.ts";
import type { Origin } from "./origin.ts";
import { originOf } from "./origin-of.ts";
import { rulesUnder } from "./rules-under.ts";

/** How much of what is said of a value is memory alone. */
function memoryWords(of: string): string {
  const rules = [...rulesUnder(of).keys()];
  const count = rules.filter(({ basis }) => basis === "from memory").length;
  if (count === 0) return "";
  return count === rules.length ? "from memory" : "partly from memory";
}

/** A button that says where a value comes from, and a mark beside it where that is memory alone. */
export class WhereFrom {
  readonly element: HTMLElement;
  readonly #mark = h("span", { class: "from-memory", hidden: true });
  readonly #button: HTMLButtonElement;
  readonly #words: HTMLElement;
  #shown: Origin | undefined;

  constructor() {
    bringStyle("tools.css");
    const id = freshId("where-from");
    this.#words = h("div", { id, class: "source-words", hidden: true, role: "note" });
    this.#button = h(
      "button",
      { type: "button", class: "quiet small", "aria-expanded": "false", "aria-controls": id },
      "?",
    );
    this.#button.addEventListener("click", () => void this.#toggle());
    this.element = h("div", { class: "where-from", hidden: true }, this.#mark, this.#button, this.#words);
  }

  show(origin: Origin | undefined): void {
    if (origin?.of === this.#shown?.of && origin?.shown === this.#shown?.shown) return;
    this.#shown = origin;
    this.element.hidden = origin === undefined;
    this.#fold(true);
    if (!origin) return;
    this.#mark.textContent = memoryWords(origin.of);
    this.#mark.hidden = this.#mark.textContent === "";
    this.#button.setAttribute("aria-label", `Where does ${origin.shown} come from?`);
    this.#button.title = `Where does ${origin.shown} come from?`;
  }

  #fold(isFolded: boolean): void {
    this.#words.hidden = isFolded;
    this.#button.setAttribute("aria-expanded", String(!isFolded));
  }

  async #toggle(): Promise<void> {
    if (!this.#words.hidden) return this.#fold(true);
    const origin = this.#shown!;
    const { sourceWords } = await import("./source-words.ts");
    if (origin !== this.#shown) return;
    replaceContent(this.#words, sourceWords(rulesUnder(origin.of)));
    this.#fold(false);
  }
}

/** What a value stands in. */
export interface Marked {
  readonly path: Path;
  readonly element: HTMLElement;
}

const controls = new WeakMap<HTMLElement, WhereFrom>();

function controlIn(element: HTMLElement): WhereFrom {
  const known = controls.get(element);
  if (known) return known;
  const control = new WhereFrom();
  controls.set(element, control);
  element.append(control.element);
  return control;
}

/** Puts the button beside every value that is the catalogue's, and takes it from those that no longer are. */
export function markFields(fields: readonly Marked[], source: BuildSource): void {
  for (const { path, element } of fields) {
    const origin = originOf(source, path);
    if (origin || controls.has(element)) controlIn(element).show(origin);
  }
}

export function markElement(element: HTMLElement, origin: Origin | undefined): void {
  if (origin) controlIn(element).show(origin);
}
