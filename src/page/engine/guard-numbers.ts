import type { Reading } from "../state/reading.ts";

/** Numbers by which a worker knows the page's guards; one that the page holds no longer is told to be forgotten. */
export class GuardNumbers {
  readonly #numbers = new WeakMap<Reading, number>();
  readonly #gone: FinalizationRegistry<number>;
  #last = 0;

  constructor(forget: (number: number) => void) {
    this.#gone = new FinalizationRegistry(forget);
  }

  next(): number {
    this.#last += 1;
    return this.#last;
  }

  give(reading: Reading, number: number): void {
    this.#numbers.set(reading, number);
    this.#gone.register(reading, number);
  }

  /** @throws RangeError for a reading that was never given a number */
  of(reading: Reading): number {
    const number = this.#numbers.get(reading);
    if (number === undefined) throw new RangeError("this guard was not read by this engine");
    return number;
  }
}
