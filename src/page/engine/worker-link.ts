import { type Remote, wrap } from "comlink";

/** A worker of the page, started with the first question. One that fails fails what was asked, and the next question starts another. */
export class WorkerLink<Desk> {
  readonly #name: string;
  readonly #refusals = new Set<(error: Error) => void>();
  #desk: Remote<Desk> | undefined;

  /** @param name of its bundle, which lies beside the page's code */
  constructor(name: string) {
    this.#name = name;
  }

  /** @throws Error with what the worker refuses, or where it cannot be loaded */
  async ask<Answer>(question: (desk: Remote<Desk>) => Answer): Promise<Awaited<Answer>> {
    this.#desk ??= this.#start();
    const desk = this.#desk;
    let refuse: (error: Error) => void = () => undefined;
    // Raced against one lasting promise of failure, every question would leave something behind on it.
    const failed = new Promise<never>((_, reject) => {
      refuse = reject;
      this.#refusals.add(reject);
    });
    try {
      return await Promise.race([question(desk), failed]);
    } finally {
      this.#refusals.delete(refuse);
    }
  }

  #start(): Remote<Desk> {
    const { href } = new URL(`./${this.#name}.js`, import.meta.url);
    const worker = new Worker(href, { type: "module", name: this.#name });
    worker.addEventListener("error", ({ message }) => {
      const error = new Error(message || "its code could not be loaded; load the page again");
      this.#desk = undefined;
      worker.terminate();
      for (const refuse of [...this.#refusals]) refuse(error);
    });
    return wrap<Desk>(worker);
  }
}
