/** Which step is pointed at, in the list or in the drawing: where the pointer is, else where the focus is. */
export class Pointed {
  readonly #light: (step: number | undefined) => void;
  #under: number | undefined;
  #focused: number | undefined;

  /** @param light lights one step and puts out all others */
  constructor(light: (step: number | undefined) => void) {
    this.#light = light;
  }

  listen(element: Element, focusable: Element, step: number): void {
    element.addEventListener("pointerenter", () => this.#set(step, this.#focused));
    element.addEventListener("pointerleave", () => this.#set(undefined, this.#focused));
    focusable.addEventListener("focus", () => this.#set(this.#under, step));
    focusable.addEventListener("blur", () => this.#set(this.#under, undefined));
    // Not every browser moves the focus to a box that is ticked by pointer.
    focusable.addEventListener("change", () => this.#set(this.#under, step));
  }

  #set(under: number | undefined, focused: number | undefined): void {
    this.#under = under;
    this.#focused = focused;
    this.#light(under ?? focused);
  }
}
