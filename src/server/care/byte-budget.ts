import { ServiceBusy } from "../work/job-failures.ts";
import { TooManyRequests } from "./refusals.ts";

/** Memory that all requests share, and of which no client has more than its share at a time. */
export class ByteBudget {
  readonly #share: number;
  readonly #takenBy = new Map<string, number>();
  #left: number;

  constructor(bytes: number, share: number) {
    this.#left = bytes;
    this.#share = share;
  }

  /** @throws TooManyRequests beyond the client's share; ServiceBusy where less than that is left, unless `isLoneLocal` */
  take(client: string, bytes: number, isLoneLocal = false): void {
    const taken = (this.#takenBy.get(client) ?? 0) + bytes;
    if (taken > this.#share)
      throw new TooManyRequests(`expected at most ${this.#share} bytes at a time from one client`);
    if (bytes > this.#left && !isLoneLocal) throw new ServiceBusy();
    this.#left -= bytes;
    this.#takenBy.set(client, taken);
  }

  give(client: string, bytes: number): void {
    this.#left += bytes;
    const taken = (this.#takenBy.get(client) ?? 0) - bytes;
    if (taken > 0) this.#takenBy.set(client, taken);
    else this.#takenBy.delete(client);
  }
}
