import { constants, setPriority } from "node:os";
import { Piscina } from "piscina";
import { PresolderError } from "../../errors.ts";
import type { JobContext } from "./job.ts";
import { JOBS } from "./jobs.ts";
import { beginTask, isStopped, type Task, type TaskResult } from "./task.ts";

/** The event loop's thread goes first where threads wait for a processor. Linux counts this for the calling thread alone. */
if (process.platform === "linux") setPriority(constants.priority.PRIORITY_BELOW_NORMAL);

class Stopped extends Error {}

/** The buffers behind an answer's typed arrays, to be handed over instead of copied. A job's answer owns what it holds. */
function ownBuffers(value: unknown, found = new Set<ArrayBuffer>()): Set<ArrayBuffer> {
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer) found.add(value.buffer);
  } else if (typeof value === "object" && value !== null) {
    for (const entry of Object.values(value)) ownBuffers(entry, found);
  }
  return found;
}

async function runTask(task: Task): Promise<TaskResult> {
  const { name, input } = task;
  beginTask(task);
  const context: JobContext = {
    checkpoint() {
      if (isStopped(task)) throw new Stopped();
    },
  };
  try {
    context.checkpoint();
    const run = JOBS[name].run as (input: unknown, context: JobContext) => unknown;
    return { value: await run(input, context) };
  } catch (error) {
    if (error instanceof Stopped) return { stopped: true };
    if (error instanceof PresolderError) {
      return { fault: { code: error.code, detail: error.message, faults: error.faults } };
    }
    throw error;
  }
}

/** What a worker thread runs: one task of the pool. */
export default async function work(task: Task): Promise<unknown> {
  const result = await runTask(task);
  return Piscina.move({
    [Piscina.transferableSymbol]: [...ownBuffers(result)],
    [Piscina.valueSymbol]: result,
  } as never);
}
