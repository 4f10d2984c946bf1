import type { WorkSize } from "./fair-queue.ts";

/** What a job may use of its surroundings. */
export interface JobContext {
  /** To be called now and then; throws where nobody waits for the answer any more. */
  checkpoint(): void;
}

/** What bounds the requests under way: all that render or solve, and sets besides. */
export type Gate = "render" | "set";

/** Something that a worker can do. */
export interface Job<Input, Output> {
  /**
   * What a request asks for, as plain data.
   * @throws PresolderError naming the field at fault
   */
  read?(...asked: never[]): Input;
  /**
   * Runs in a worker. A pure function of its input; input and answer are plain data (structured clone), and the answer's typed
   * arrays change hands without a copy, so they must not be kept.
   */
  run(input: Input, context: JobContext): Output | Promise<Output>;
  /** How long it may hold its worker, judged from what it is asked. */
  size(input: Input): WorkSize;
  /** The gate that its route's `config` names; without one it is let through whatever else is under way. */
  readonly gate?: Gate;
}
