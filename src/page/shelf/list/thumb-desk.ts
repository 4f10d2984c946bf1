import type { GuardLine } from "../../../shelf/guard.ts";
import { h, replaceContent } from "../../dom/element.ts";
import type { Bench } from "../../start/bench.ts";
import { drawingElement, keptDrawing } from "./kept-drawings.ts";

/** So near the screen that it is what comes next. */
const NEAR = "80px";

/** Brings the small drawings of those guards that are on the screen, one after the other. */
export class ThumbDesk {
  readonly #bench: Bench;
  readonly #lines = new WeakMap<Element, GuardLine>();
  readonly #waiting = new Set<Element>();
  readonly #observer: IntersectionObserver;
  #isDrawing = false;

  constructor(bench: Bench) {
    this.#bench = bench;
    this.#observer = new IntersectionObserver((entries) => this.#seen(entries), { rootMargin: NEAR });
  }

  /** A place for a guard's drawing, empty until it is seen. */
  place(line: GuardLine): HTMLElement {
    const element = h("div", { class: "thumb", "aria-hidden": "true" });
    this.#lines.set(element, line);
    this.#observer.observe(element);
    return element;
  }

  #seen(entries: readonly IntersectionObserverEntry[]): void {
    for (const { target, isIntersecting } of entries) {
      if (isIntersecting) this.#waiting.add(target);
      else this.#waiting.delete(target);
    }
    if (!this.#isDrawing) void this.#draw();
  }

  async #draw(): Promise<void> {
    this.#isDrawing = true;
    for (let [place] = this.#waiting; place; [place] = this.#waiting) {
      this.#waiting.delete(place);
      this.#observer.unobserve(place);
      // A guard without its drawing is still told by its name.
      const svg = await keptDrawing(this.#bench, this.#lines.get(place)!).catch(() => "");
      replaceContent(place, drawingElement(svg));
    }
    this.#isDrawing = false;
  }
}
