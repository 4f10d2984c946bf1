import { freshId, h, replaceContent } from "../dom/element.ts";
import { askView, type WrittenAsk } from "./ask-view.ts";
import { placeKey, placesFor, placeWords, type Vocabulary, type WrittenWish } from "./wish-list.ts";

/** What is wished for, place by place, to be changed without a word being typed. */
export class WishForm {
  readonly element = h("div", { class: "stack" });
  #wishes: WrittenWish[] = [];
  #vocabulary: Vocabulary | undefined;
  readonly #open = new Set<string>();
  readonly #changed: () => void;

  /** @param changed called at every change that a person makes */
  constructor(changed: () => void) {
    this.#changed = changed;
  }

  show(wishes: WrittenWish[], vocabulary: Vocabulary): void {
    this.#wishes = wishes;
    this.#vocabulary = vocabulary;
    this.#draw();
  }

  /** Wishes with a word in them; a target without an end asks for nothing. */
  read() {
    return this.#wishes.flatMap(({ where, asks }) => {
      const asked = asks.flatMap(({ word, targets }) => {
        const said = targets.filter(({ low, high }) => low !== undefined || high !== undefined);
        return said.length > 0 ? [{ word, targets: said }] : [];
      });
      return asked.length > 0 ? [{ where, asks: asked }] : [];
    });
  }

  /** Draws anew and leaves the focus where it was, or on what took its place. */
  #draw(focus?: string): void {
    const add = h("button", { type: "button", "data-spot": "add" }, "Add a place");
    add.addEventListener("click", () => {
      this.#wishes.push({ where: { kind: "position", position: 1 }, asks: [] });
      this.#draw(`word ${this.#wishes.length - 1}`);
    });
    replaceContent(
      this.element,
      this.#wishes.map((wish, index) => this.#wishView(wish, index)),
      h("div", { class: "buttons" }, add),
    );
    if (focus === undefined) return;
    this.#changed();
    this.element.querySelector<HTMLElement>(`[data-spot="${focus}"]`)?.focus();
  }

  #placeField(wish: WrittenWish, index: number): HTMLElement {
    const id = freshId("place");
    const places = placesFor(wish.where);
    const select = h(
      "select",
      { id, "data-spot": `place ${index}` },
      places.map((where) =>
        h("option", { value: placeKey(where), selected: placeKey(where) === placeKey(wish.where) }, placeWords(where)),
      ),
    );
    select.addEventListener("change", () => {
      wish.where = places.find((where) => placeKey(where) === select.value)!;
      this.#draw(`place ${index}`);
    });
    return h("div", { class: "field" }, h("label", { for: id }, "Where"), select);
  }

  #wordField(wish: WrittenWish, index: number): HTMLElement {
    const id = freshId("word");
    const taken = new Set(wish.asks.map(({ word }) => word));
    const words = this.#vocabulary!.words.filter(({ word }) => !taken.has(word));
    const select = h(
      "select",
      { id, "data-spot": `word ${index}` },
      h("option", { value: "" }, "choose a word"),
      words.map(({ word, meaning }) => h("option", { value: word }, `${word}: ${meaning}`)),
    );
    select.addEventListener("change", () => {
      const chosen = words.find(({ word }) => word === select.value);
      if (!chosen) return;
      wish.asks.push({ word: chosen.word, targets: chosen.targets.map((target) => ({ ...target })) });
      this.#draw(`word ${index}`);
    });
    return h("div", { class: "field" }, h("label", { for: id }, "Add a word"), select);
  }

  #askView({ where, asks }: WrittenWish, index: number, ask: WrittenAsk, at: number): HTMLElement {
    const key = `${index} ${ask.word}`;
    return askView(ask, this.#vocabulary!, {
      where: placeWords(where),
      isOpen: this.#open.has(key),
      opened: (isOpen) => {
        if (isOpen) this.#open.add(key);
        else this.#open.delete(key);
      },
      changed: this.#changed,
      remove: () => {
        asks.splice(at, 1);
        this.#draw(`word ${index}`);
      },
    });
  }

  #wishView(wish: WrittenWish, index: number): HTMLElement {
    const remove = h("button", { type: "button", class: "small" }, "Leave this place out");
    remove.addEventListener("click", () => {
      this.#wishes.splice(index, 1);
      this.#draw("add");
    });
    return h(
      "fieldset",
      { class: "wish" },
      h("legend", {}, placeWords(wish.where)),
      h(
        "ul",
        { class: "asks" },
        wish.asks.map((ask, at) => this.#askView(wish, index, ask, at)),
      ),
      h("div", { class: "field-row" }, this.#placeField(wish, index), this.#wordField(wish, index)),
      h("div", { class: "buttons" }, remove),
    );
  }
}
