import { Piscina } from "piscina";
import { PresolderError } from "../../errors.ts";
import { JobStopped, workerLoss } from "./job-failures.ts";
import { hasBegun, stopTask, type Task, type TaskResult, taskOf } from "./task.ts";

export interface ThreadOptions {
  readonly count: number;
  /** Bound on each thread's JavaScript heap. */
  readonly maxHeapMib: number;
  /** What the threads run. */
  readonly filename: string;
  /** Called when a thread has ended unasked. */
  readonly onLost: () => void;
}

/** A worker that has not reached a checkpoint by then is ended, its caches with it: nobody's work holds a place for long. */
const STOP_GRACE_MS = 60;
const WAKE_AFTER_MS = 100;
const IDLE_TIMEOUT_MS = 60_000;

function settle(result: TaskResult): unknown {
  if ("value" in result) return result.value;
  if ("stopped" in result) throw new JobStopped();
  throw new PresolderError(result.fault.code, result.fault.detail, result.fault.faults);
}

/**
 * The threads that tasks run in; piscina starts, feeds and ends them. Its own queue is left out of it: whoever calls has the order
 * of tasks in hand and asks for no more at a time than there are threads, so that a task only ever waits for a thread that starts.
 */
export class Threads {
  readonly #pool: Piscina<Task, TaskResult>;
  readonly #onLost: () => void;
  #closed = false;

  constructor({ count, maxHeapMib, filename, onLost }: ThreadOptions) {
    this.#onLost = onLost;
    this.#pool = new Piscina({
      filename,
      minThreads: 1,
      maxThreads: count,
      idleTimeout: IDLE_TIMEOUT_MS,
      // Waiting by Atomics would hold up whatever else a worker's own event loop has to do.
      atomics: "disabled",
      resourceLimits: { maxOldGenerationSizeMb: maxHeapMib },
    });
    // An idle worker that ends is replaced when work comes; without a listener its error would end the process.
    this.#pool.on("error", onLost);
    this.#pool.on("workerDestroy", () => setTimeout(() => this.#wake(), WAKE_AFTER_MS).unref());
  }

  /**
   * Runs a task to its end. An aborted `signal` stops it at its next checkpoint, or ends its thread.
   * @throws PresolderError as the job threw it, JobStopped, WorkerLost, WorkerOutOfMemory
   */
  async run(task: Task, signal: AbortSignal | undefined): Promise<unknown> {
    if (signal?.aborted || this.#closed) throw new JobStopped();
    const end = new AbortController();
    let grace: NodeJS.Timeout | undefined;
    const onAbort = () => {
      stopTask(task);
      // A thread that is still loading is let be: it gives the task up when it comes to it, and has no room for another before.
      grace = setTimeout(() => hasBegun(task) && end.abort(), STOP_GRACE_MS);
    };
    signal?.addEventListener("abort", onAbort, { once: true });
    try {
      return settle(await this.#pool.run(task, { signal: end.signal }));
    } catch (error) {
      if (end.signal.aborted) throw new JobStopped();
      const loss = workerLoss(error);
      if (loss !== error) this.#onLost();
      throw loss;
    } finally {
      clearTimeout(grace);
      signal?.removeEventListener("abort", onAbort);
    }
  }

  /** Piscina replaces a thread lost while it started only when the next task comes, and leaves the one it was for waiting. */
  #wake(): void {
    if (this.#closed || this.#pool.queueSize === 0) return;
    this.#pool.run(taskOf("ready", null)).catch(() => {});
  }

  get list(): Piscina["threads"] {
    return this.#pool.threads;
  }

  get closed(): boolean {
    return this.#closed;
  }

  async close(): Promise<void> {
    this.#closed = true;
    await this.#pool.destroy();
  }
}
