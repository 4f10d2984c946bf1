/** Large work may run for many seconds and cannot be put aside once begun. */
export type WorkSize = "small" | "large";

export interface Turn {
  /** Whoever asked; all the work of one client shares that client's turns. */
  readonly client: string;
  readonly size: WorkSize;
}

interface Waiting {
  readonly start: () => void;
}

interface Flow {
  readonly size: WorkSize;
  /** Time used, on the queue's own clock: the flow with the least of it goes next. */
  usedMs: number;
  running: number;
  readonly waiting: Waiting[];
}

/** What work is taken to cost until it has ended and its real cost is known. */
const EXPECTED_MS: Readonly<Record<WorkSize, number>> = { small: 50, large: 1_000 };

export class LeftTheQueue extends Error {}

/**
 * Hands out a fixed number of places fairly: among those waiting, the client goes next that has used the least time so far, its
 * small and its large work apart (start-time fair queueing: Goyal, Vin & Cheng, SIGCOMM 1996, with costs measured afterwards).
 * Large work never takes the last place, so that small work always finds one that is free soon.
 */
export class FairQueue {
  readonly #now: () => number;
  readonly #places: number;
  readonly #placesForLarge: number;
  readonly #flows = new Map<string, Flow>();
  readonly #running: Record<WorkSize, number> = { small: 0, large: 0 };
  #waiting = 0;
  /** Where the clock stands: the used time of whoever began last. Newcomers begin here, not at zero. */
  #clockMs = 0;

  /** `now` tells milliseconds. */
  constructor(places: number, now: () => number = () => performance.now()) {
    this.#now = now;
    this.#places = places;
    this.#placesForLarge = Math.max(1, places - 1);
  }

  get waiting(): number {
    return this.#waiting;
  }

  get running(): number {
    return this.#running.small + this.#running.large;
  }

  /**
   * Runs `work` when its turn comes.
   * @throws LeftTheQueue where `signal` aborts before; `work` itself has to heed the signal afterwards
   */
  async run<T>(turn: Turn, signal: AbortSignal | undefined, work: () => Promise<T>): Promise<T> {
    const flow = this.#flowOf(turn);
    await this.#turnOf(flow, signal);
    const began = this.#now();
    try {
      return await work();
    } finally {
      this.#end(flow, this.#now() - began);
    }
  }

  #flowOf({ client, size }: Turn): Flow {
    const key = `${size} ${client}`;
    const known = this.#flows.get(key);
    if (known) return known;
    const flow: Flow = { size, usedMs: this.#clockMs, running: 0, waiting: [] };
    this.#flows.set(key, flow);
    return flow;
  }

  #turnOf(flow: Flow, signal: AbortSignal | undefined): Promise<void> {
    return new Promise((resolve, reject) => {
      if (flow.waiting.length === 0 && flow.running === 0) flow.usedMs = Math.max(flow.usedMs, this.#clockMs);
      const leave = () => {
        flow.waiting.splice(flow.waiting.indexOf(waiting), 1);
        this.#waiting--;
        reject(new LeftTheQueue());
      };
      const waiting: Waiting = {
        start: () => {
          signal?.removeEventListener("abort", leave);
          resolve();
        },
      };
      flow.waiting.push(waiting);
      this.#waiting++;
      signal?.addEventListener("abort", leave, { once: true });
      this.#startNext();
    });
  }

  #next(): Flow | undefined {
    let next: Flow | undefined;
    for (const flow of this.#flows.values()) {
      const hasPlace = flow.size === "small" || this.#running.large < this.#placesForLarge;
      if (flow.waiting.length > 0 && hasPlace && !(next && next.usedMs <= flow.usedMs)) next = flow;
    }
    return next;
  }

  #startNext(): void {
    while (this.running < this.#places) {
      const flow = this.#next();
      if (!flow) return;
      this.#clockMs = Math.max(this.#clockMs, flow.usedMs);
      flow.usedMs += EXPECTED_MS[flow.size];
      flow.running++;
      this.#running[flow.size]++;
      this.#waiting--;
      flow.waiting.shift()!.start();
    }
  }

  #end(flow: Flow, tookMs: number): void {
    flow.usedMs += tookMs - EXPECTED_MS[flow.size];
    flow.running--;
    this.#running[flow.size]--;
    this.#startNext();
    this.#forgetIdle();
  }

  /** An idle flow behind the clock would begin at the clock again, as if it were new. */
  #forgetIdle(): void {
    const allIdle = this.running === 0 && this.#waiting === 0;
    for (const [key, flow] of this.#flows) {
      if (allIdle || (flow.running === 0 && flow.waiting.length === 0 && flow.usedMs <= this.#clockMs)) {
        this.#flows.delete(key);
      }
    }
  }
}
