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

/** A worker ended before it had answered: killed from outside, or by a fault of its own. */
export class WorkerLost extends Error {
  constructor() {
    super("A worker ended before it had answered");
    this.name = "WorkerLost";
  }
}

/** A job wanted more memory than a worker may have. */
export class WorkerOutOfMemory extends Error {
  constructor() {
    super("The work needed more memory than the service gives to one request");
    this.name = "WorkerOutOfMemory";
  }
}

const LOST = /^worker exited with code|^Terminating worker thread/;

/** Piscina tells the end of a worker only by its message; any other error stays as it is. */
export function workerLoss(error: unknown): unknown {
  if (!(error instanceof Error)) return error;
  if ((error as NodeJS.ErrnoException).code === "ERR_WORKER_OUT_OF_MEMORY") return new WorkerOutOfMemory();
  return LOST.test(error.message) ? new WorkerLost() : error;
}
