import { PresolderError } from "../../errors.ts";
import { MAX_WAITING_JOBS, MAX_WORKER_HEAP_MIB } from "../../limits.ts";
import { PATHS } from "../paths.ts";
import { FairQueue, LeftTheQueue } from "./fair-queue.ts";
import { JobStopped, ServiceBusy, WorkerLost } from "./job-failures.ts";
import { type JobInput, type JobName, type JobOutput, sizeOfJob } from "./jobs.ts";
import { taskOf } from "./task.ts";
import { Threads } from "./threads.ts";

export interface JobOptions {
  readonly signal?: AbortSignal;
  /** Who asks, for a fair share of the workers. */
  readonly client?: string;
  /** Whether the job may wait though very many do. */
  readonly isLoneLocal?: boolean;
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

const NOBODY = "";

function outcomeOf(error: unknown): JobOutcome {
  if (error instanceof JobStopped) return "stopped";
  return error instanceof PresolderError ? "refused" : "failed";
}

/** Threads that run the jobs of `jobs.ts`, so that the event loop never computes, and the one queue before them. */
export class WorkerPool {
  readonly #threads: Threads;
  readonly #queue: FairQueue;
  #observer: PoolObserver;

  constructor(workers: number, options: PoolOptions = {}) {
    const { observer = {}, maxHeapMib = MAX_WORKER_HEAP_MIB, filename = PATHS.workerEntry } = options;
    this.#observer = observer;
    this.#queue = new FairQueue(workers);
    const onLost = () => this.#observer.workerLost?.();
    this.#threads = new Threads({ count: workers, maxHeapMib, filename, onLost });
  }

  /**
   * Runs a job in a worker when its client's turn comes. An aborted `signal` stops it at its next checkpoint. Jobs are pure
   * functions, so one whose worker was lost is run once more.
   * @throws PresolderError as the job threw it, JobStopped, ServiceBusy, WorkerLost, WorkerOutOfMemory
   */
  readonly run: RunJob = async (name, input, { signal, client = NOBODY, isLoneLocal = false } = {}) => {
    if (signal?.aborted) throw new JobStopped();
    if (this.#queue.waiting >= MAX_WAITING_JOBS && !isLoneLocal) throw new ServiceBusy();
    const asked = performance.now();
    let began = asked;
    const work = () => {
      began = performance.now();
      return this.#runTwice(name, input, signal);
    };
    const tell = (outcome: JobOutcome) =>
      this.#observer.jobEnded?.(name, outcome, began - asked, performance.now() - began);
    try {
      const output = await this.#queue.run({ client, size: sizeOfJob(name, input) }, signal, work);
      tell("done");
      return output as JobOutput<typeof name>;
    } catch (error) {
      const known = error instanceof LeftTheQueue ? new JobStopped() : error;
      tell(outcomeOf(known));
      throw known;
    }
  };

  async #runTwice(name: JobName, input: unknown, signal: AbortSignal | undefined): Promise<unknown> {
    const once = () => this.#threads.run(taskOf(name, input), signal);
    try {
      return await once();
    } catch (error) {
      if (!(error instanceof WorkerLost) || this.#threads.closed) throw error;
      return once();
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

  get threads(): Threads["list"] {
    return this.#threads.list;
  }

  close(): Promise<void> {
    return this.#threads.close();
  }
}
