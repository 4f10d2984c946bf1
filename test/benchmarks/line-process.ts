import { type ChildProcess, spawn } from "node:child_process";
import { createInterface } from "node:readline";

export interface Timing {
  readonly wallMs: number;
  /** Processor time of all its threads: what the work takes of a core, whatever else the machine does meanwhile. */
  readonly coreMs: number;
}

/** One thread each, for the contenders to be compared by the core. */
export const ONE_THREAD = { ...process.env, OMP_NUM_THREADS: "1", OPENBLAS_NUM_THREADS: "1", MKL_NUM_THREADS: "1" };

/** A process that answers every line with a line of JSON. */
export class LineProcess {
  readonly #process: ChildProcess;
  readonly #lines: AsyncIterator<string>;

  constructor(command: string, args: readonly string[]) {
    this.#process = spawn(command, args, { env: ONE_THREAD, stdio: ["pipe", "pipe", "inherit"] });
    this.#lines = createInterface({ input: this.#process.stdout! })[Symbol.asyncIterator]();
  }

  async ask<Answer = Timing>(question: unknown): Promise<Answer> {
    this.#process.stdin!.write(`${JSON.stringify(question)}\n`);
    const { value, done } = await this.#lines.next();
    if (done) throw new Error("a process under test stopped before it answered");
    return JSON.parse(value) as Answer;
  }

  stop(): void {
    this.#process.stdin!.end();
  }
}
