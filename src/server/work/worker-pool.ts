import { Piscina } from "piscina";
import { PresolderError } from "../../errors.ts";
import { MAX_WAITING_JOBS, MAX_WORKER_HEAP_MIB } from "../../limits.ts";
import { PATHS } from "../paths.ts";
import { FairQueue, LeftTheQueue } from "./fair-queue.ts";
import { type JobInput, type JobName, type JobOutput, sizeOfJob } from "./jobs.ts";
import { hasBegun, stopTask, type Task, type TaskResult, taskOf } from "./task.ts";
import { WorkerLost, workerLoss } from "./worker-loss.ts";

/** Every worker is busy and the queue is full. */
export class ServiceBusy extends Error {
  constructor() {
    super("The service is busy; try again in a moment");
    this.name = "ServiceBusy";
  }
}

/** The work was given up because nobody waits for it any more. */
export class JobStopped extends Error {
  constructor() {
    super("The request was given up");
    this.name = "JobStopped";
  }
}

export interface JobOptions {
  readonly signal?: AbortSignal;
  /** Who asks, for a fair share of the workers. */
  readonly client?: string;
}

export type JobOutcome = "done" | "refused" | "stopped" | "failed";

/** What happens in the pool, for whoever keeps figures. */
export interface PoolObserver {
  jobEnded?(name: JobName, outcome: JobOutcome, waitedMs: number, tookMs: number): void;
  workerLost?(): void;
}

export interface PoolOptions {
  readonly observer?: PoolObserver;
  /** Bound on each worker's JavaScript heap. */
  readonly maxHeapMib?: number;
  /** What the workers run. */
  readonly filename?: string;
}

export type RunJob = <Name extends JobName>(
  name: Name,
  input: JobInput<Name>,
  options?: JobOptions,
) => Promise<JobOutput<Name>>;

/** A worker that has not reached a checkpoint by then is ended, its caches with it: nobody's work holds a place for long. */
const STOP_GRACE_MS = 60;
const WAKE_AFTER_MS = 100;
const IDLE_TIMEOUT_MS = 60_000;
const NOBODY = "";

function settle(result: TaskResult): unknown {
  if ("value" in result) return result.value;
  if ("stopped" in result) throw new JobStopped();
  throw new PresolderError(result.fault.code, result.fault.detail, result.fault.faults);
}

function outcomeOf(error: unknown): JobOutcome {
  if (error instanceof JobStopped) return "stopped";
  return error instanceof PresolderError ? "refused" : "failed";
}

/** Threads that run the jobs of `jobs.ts`, so that the event loop never computes. */
export class WorkerPool {
  readonly #pool: Piscina<Task, TaskResult>;
  readonly #queue: FairQueue;
  #observer: PoolObserver;
  #closed = false;

  constructor(workers: number, options: PoolOptions = {}) {
    const { observer = {}, maxHeapMib = MAX_WORKER_HEAP_MIB, filename = PATHS.workerEntry } = options;
    this.#observer = observer;
    this.#queue = new FairQueue(workers);
    this.#pool = new Piscina({
      filename,
      minThreads: 1,
      maxThreads: workers,
      idleTimeout: IDLE_TIMEOUT_MS,
      // Waiting by Atomics would hold up whatever else a worker's own event loop has to do.
      atomics: "disabled",
      resourceLimits: { maxOldGenerationSizeMb: maxHeapMib },
    });
    // An idle worker that ends is replaced when work comes; without a listener its error would end the process.
    this.#pool.on("error", () => this.#observer.workerLost?.());
    this.#pool.on("workerDestroy", () => setTimeout(() => this.#wake(), WAKE_AFTER_MS).unref());
  }

  /**
   * Runs a job in a worker when its client's turn comes. An aborted `signal` stops it at its next checkpoint. Jobs are pure
   * functions, so one whose worker was lost is run once more.
   * @throws PresolderError as the job threw it, JobStopped, ServiceBusy, WorkerLost, WorkerOutOfMemory
   */
  readonly run: RunJob = async (name, input, { signal, client = NOBODY } = {}) => {
    if (signal?.aborted) throw new JobStopped();
    if (this.#queue.waiting >= MAX_WAITING_JOBS) throw new ServiceBusy();
    const asked = performance.now();
    let began = asked;
    const attempt = () => {
      began = performance.now();
      return this.#attemptTwice(name, input, signal);
    };
    const tell = (outcome: JobOutcome) =>
      this.#observer.jobEnded?.(name, outcome, began - asked, performance.now() - began);
    try {
      const output = await this.#queue.run({ client, size: sizeOfJob(name, input) }, signal, attempt);
      tell("done");
      return output as JobOutput<typeof name>;
    } catch (error) {
      const known = error instanceof LeftTheQueue ? new JobStopped() : error;
      tell(outcomeOf(known));
      throw known;
    }
  };

  /** Piscina replaces a worker lost while it started up only when the next task comes, and leaves those that wait waiting. */
  #wake(): void {
    if (this.#closed || this.#pool.queueSize === 0) return;
    this.#pool.run(taskOf("ready", null)).catch(() => {});
  }

  async #attemptTwice(name: JobName, input: unknown, signal: AbortSignal | undefined): Promise<unknown> {
    try {
      return await this.#attempt(name, input, signal);
    } catch (error) {
      if (!(error instanceof WorkerLost) || this.#closed) throw error;
      return this.#attempt(name, input, signal);
    }
  }

  async #attempt(name: JobName, input: unknown, signal: AbortSignal | undefined): Promise<unknown> {
    if (signal?.aborted || this.#closed) throw new JobStopped();
    const task = taskOf(name, input);
    const end = new AbortController();
    let grace: NodeJS.Timeout | undefined;
    let leave: (reason: Error) => void = () => {};
    const left = new Promise<never>((_, reject) => {
      leave = reject;
    });
    const onAbort = () => {
      stopTask(task);
      // A worker that is still loading is let be: it gives the task up by itself when it comes to it.
      grace = setTimeout(() => (hasBegun(task) ? end.abort() : leave(new JobStopped())), STOP_GRACE_MS);
    };
    signal?.addEventListener("abort", onAbort, { once: true });
    try {
      const work = this.#pool.run(task, { signal: end.signal });
      return settle(await Promise.race([work, left]));
    } catch (error) {
      if (end.signal.aborted) throw new JobStopped();
      const loss = workerLoss(error);
      if (loss !== error) this.#observer.workerLost?.();
      throw loss;
    } finally {
      clearTimeout(grace);
      signal?.removeEventListener("abort", onAbort);
    }
  }

  /** Adds up what happens from now on. */
  observe(observer: PoolObserver): void {
    this.#observer = observer;
  }

  get jobsWaiting(): number {
    return this.#queue.waiting;
  }

  get jobsRunning(): number {
    return this.#queue.running;
  }

  get threads(): Piscina["threads"] {
    return this.#pool.threads;
  }

  async close(): Promise<void> {
    this.#closed = true;
    await this.#pool.destroy();
  }
}
