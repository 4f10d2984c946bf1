const MAX_STEPS = 200;

/** A line of states to walk back and forth on. */
export class History<T> {
  #steps: T[] = [];
  #at = -1;

  get canUndo(): boolean {
    return this.#at > 0;
  }

  get canRedo(): boolean {
    return this.#at < this.#steps.length - 1;
  }

  /** The present state; undefined before the first. */
  get now(): T | undefined {
    return this.#steps[this.#at];
  }

  /** Adds a state after the present one; what had been undone is dropped. */
  push(step: T): void {
    this.#steps = [...this.#steps.slice(0, this.#at + 1), step].slice(-MAX_STEPS);
    this.#at = this.#steps.length - 1;
  }

  undo(): T | undefined {
    if (!this.canUndo) return undefined;
    this.#at -= 1;
    return this.#steps[this.#at];
  }

  redo(): T | undefined {
    if (!this.canRedo) return undefined;
    this.#at += 1;
    return this.#steps[this.#at];
  }
}
