import { ServiceBusy } from "../work/job-failures.ts";

/** Memory that all requests share. */
export class ByteBudget {
  #left: number;

  constructor(bytes: number) {
    this.#left = bytes;
  }

  /** @throws ServiceBusy where less is left */
  take(bytes: number): void {
    if (bytes > this.#left) throw new ServiceBusy();
    this.#left -= bytes;
  }

  give(bytes: number): void {
    this.#left += bytes;
  }
}
