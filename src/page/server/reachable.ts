/** Between two attempts to reach a service that is away. */
const RETRY_MS = 3000;

/** The requests that wait for the service, and who wants to know how many there are. */
class Waiting {
  readonly #givenUp = new Set<() => void>();
  readonly #watchers = new Set<(count: number) => void>();

  watch(effect: (count: number) => void): void {
    this.#watchers.add(effect);
    effect(this.#givenUp.size);
  }

  /** Ends every wait: what was asked for fails. */
  giveUp(): void {
    for (const end of [...this.#givenUp]) end();
  }

  /** Waits until another attempt is worth it. @returns false where it was given up */
  pause(signal: AbortSignal | undefined): Promise<boolean> {
    return new Promise((resolve) => {
      const settle = (goOn: boolean) => {
        clearTimeout(timer);
        removeEventListener("online", again);
        this.#givenUp.delete(end);
        signal?.removeEventListener("abort", end);
        this.#tell();
        resolve(goOn);
      };
      const again = () => settle(true);
      const end = () => settle(false);
      const timer = setTimeout(again, RETRY_MS);
      addEventListener("online", again);
      signal?.addEventListener("abort", end);
      this.#givenUp.add(end);
      this.#tell();
    });
  }

  #tell(): void {
    for (const watcher of this.#watchers) watcher(this.#givenUp.size);
  }
}

export const waitingForService = new Waiting();
