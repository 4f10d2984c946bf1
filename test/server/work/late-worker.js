import { existsSync } from "node:fs";

// Loads for as long as the file is missing that a test makes.
const pause = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
while (!existsSync(process.env.LATE_WORKER_MAY_LOAD)) Atomics.wait(pause, 0, 0, 5);

/** A worker that answers a job with its name, or gives it up where it was told to. */
export default function work({ name, flags: [isStopped] }) {
  return isStopped ? { stopped: true } : { value: name };
}
