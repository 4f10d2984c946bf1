import type { ErrorCode, InputFault } from "../../errors.ts";
import type { JobName } from "./jobs.ts";

/** Flags that a pool and its worker share while a task lasts, each 0 or 1. */
const STOP = 0;
const BEGUN = 1;

/** What a worker is sent. */
export interface Task {
  readonly name: JobName;
  readonly input: unknown;
  readonly flags: Int32Array;
}

export type TaskResult =
  | { readonly value: unknown }
  | { readonly fault: { readonly code: ErrorCode; readonly detail: string; readonly faults: readonly InputFault[] } }
  | { readonly stopped: true };

export function taskOf(name: JobName, input: unknown): Task {
  return { name, input, flags: new Int32Array(new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT)) };
}

/** Asks the worker to give the task up at its next checkpoint. */
export function stopTask({ flags }: Task): void {
  Atomics.store(flags, STOP, 1);
}

export function isStopped({ flags }: Task): boolean {
  return Atomics.load(flags, STOP) === 1;
}

export function beginTask({ flags }: Task): void {
  Atomics.store(flags, BEGUN, 1);
}

export function hasBegun({ flags }: Task): boolean {
  return Atomics.load(flags, BEGUN) === 1;
}
