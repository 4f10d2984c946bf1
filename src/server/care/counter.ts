/** Counts what is under way, by name, and tells whether one more fits. */
export class Counter {
  readonly #counts = new Map<string, number>();

  enter(name: string, bound: number): boolean {
    const count = this.#counts.get(name) ?? 0;
    if (count >= bound) return false;
    this.#counts.set(name, count + 1);
    return true;
  }

  leave(name: string): void {
    const count = this.#counts.get(name)! - 1;
    if (count > 0) this.#counts.set(name, count);
    else this.#counts.delete(name);
  }
}
