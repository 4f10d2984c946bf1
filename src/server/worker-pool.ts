import { Piscina } from "piscina";
import { type ErrorCode, type InputFault, PresolderError } from "../errors.ts";
import type { JobInput, JobName, JobOutput } from "./jobs.ts";
import { PATHS } from "./paths.ts";

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

export interface Task {
  readonly name: JobName;
  readonly input: unknown;
  /** One number, set to 1 when the work is to stop; the worker looks at it between blocks. */
  readonly stop: Int32Array;
}

export type TaskResult =
  | { readonly value: unknown }
  | { readonly fault: { readonly code: ErrorCode; readonly detail: string; readonly faults: readonly InputFault[] } }
  | { readonly stopped: true };

export interface JobOptions {
  readonly signal?: AbortSignal;
}

export type RunJob = <Name extends JobName>(
  name: Name,
  input: JobInput<Name>,
  options?: JobOptions,
) => Promise<JobOutput<Name>>;

/** A caller who has waited for this many others is better told to come back. */
const QUEUE_PER_WORKER = 32;
/** A worker that has not stopped by itself by then is ended, its caches with it. */
const STOP_GRACE_MS = 1_000;
const IDLE_TIMEOUT_MS = 60_000;
const PISCINA_QUEUE_ERRORS = ["Task queue is at limit", "No task queue available and all Workers are busy"];

function settle(result: TaskResult): unknown {
  if ("value" in result) return result.value;
  if ("stopped" in result) throw new JobStopped();
  throw new PresolderError(result.fault.code, result.fault.detail, result.fault.faults);
}

/** Threads that run the jobs of `jobs.ts`, so that the event loop never computes. */
export class WorkerPool {
  readonly #pool: Piscina<Task, TaskResult>;

  constructor(workers: number) {
    this.#pool = new Piscina({
      filename: PATHS.worker,
      minThreads: 1,
      maxThreads: workers,
      maxQueue: workers * QUEUE_PER_WORKER,
      idleTimeout: IDLE_TIMEOUT_MS,
      // Waiting by Atomics would hold up whatever else a worker's own event loop has to do.
      atomics: "disabled",
    });
  }

  /**
   * Runs a job in a worker. An aborted `signal` stops it at its next checkpoint.
   * @throws PresolderError as the job threw it, JobStopped, ServiceBusy
   */
  readonly run: RunJob = async (name, input, { signal } = {}) => {
    if (signal?.aborted) throw new JobStopped();
    const stop = new Int32Array(new SharedArrayBuffer(4));
    const end = new AbortController();
    let grace: NodeJS.Timeout | undefined;
    const onAbort = () => {
      Atomics.store(stop, 0, 1);
      grace = setTimeout(() => end.abort(), STOP_GRACE_MS);
    };
    signal?.addEventListener("abort", onAbort, { once: true });
    try {
      return settle(await this.#pool.run({ name, input, stop }, { signal: end.signal })) as JobOutput<typeof name>;
    } catch (error) {
      if (end.signal.aborted) throw new JobStopped();
      if (error instanceof Error && PISCINA_QUEUE_ERRORS.includes(error.message)) throw new ServiceBusy();
      throw error;
    } finally {
      clearTimeout(grace);
      signal?.removeEventListener("abort", onAbort);
    }
  };

  get queueSize(): number {
    return this.#pool.queueSize;
  }

  async close(): Promise<void> {
    await this.#pool.destroy();
  }
}
