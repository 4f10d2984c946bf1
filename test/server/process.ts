import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { onTestFinished } from "vitest";

export interface Service {
  readonly child: ChildProcess;
  readonly url: string;
  readonly port: number;
  /** Everything it has written to standard output and error so far. */
  readonly log: () => string;
  /** Its exit code. */
  readonly ended: Promise<number | null>;
}

interface Start {
  readonly environment?: Record<string, string>;
  readonly nodeArguments?: readonly string[];
  readonly cwd?: string;
  readonly main?: string;
}

/** The built service as a process of its own, on a free port. Ended after the test. */
export async function startService({ environment = {}, nodeArguments = [], ...rest }: Start = {}): Promise<Service> {
  const { cwd = process.cwd(), main = "dist/main.js" } = rest;
  const child = spawn(process.execPath, [...nodeArguments, main], {
    cwd,
    env: { ...process.env, PORT: "0", WORKERS: "2", LOG_LEVEL: "info", ...environment },
    stdio: ["ignore", "pipe", "pipe"],
  });
  onTestFinished(() => void child.kill("SIGKILL"));
  let log = "";
  const ended = once(child, "exit").then(([code]) => code as number | null);
  const url = new Promise<string>((resolve, reject) => {
    for (const stream of [child.stdout, child.stderr]) {
      stream.on("data", (chunk) => {
        log += chunk;
        const found = /listens on (http:\S+)\//.exec(log)?.[1];
        if (found) resolve(found);
      });
    }
    void ended.then((code) => reject(new Error(`the service ended with ${code}: ${log}`)));
  });
  const address = await url;
  return { child, url: address, port: Number(new URL(address).port), log: () => log, ended };
}
