/** Deals out turns of the event loop, one to each who asks, so that nobody else waits for two pieces of work that take milliseconds. */
class Turns {
  #last: Promise<void> = Promise.resolve();

  /** Resolves in a turn of one's own: between two of them the event loop has looked at every connection. */
  next(): Promise<void> {
    this.#last = this.#last.then(() => new Promise((resolve) => setImmediate(resolve)));
    return this.#last;
  }
}

/** Of the one event loop that there is. */
export const turns = new Turns();
