import type { LightMyRequestResponse } from "fastify";
import { buildApp } from "../../../src/server/app.ts";
import { WorkerPool } from "../../../src/server/work/worker-pool.ts";
import { Random } from "../../random.ts";
import { type FuzzRequest, requestFrom } from "./requests.ts";
import { faultIn } from "./verdict.ts";

export interface Fuzzing {
  readonly seed: number;
  readonly inputs: number;
  readonly workers: number;
}

export interface FuzzReport {
  /** Inputs by status and by kind. */
  readonly statuses: ReadonlyMap<string, number>;
  /** Each with the seed that brings it back. */
  readonly faults: readonly string[];
  readonly workersLost: number;
  readonly slowestMs: number;
  readonly slowest: string;
}

/** An answer that takes longer counts as none. */
const PATIENCE_MS = 30_000;
const MAX_FAULTS_TOLD = 20;

function describeRequest({ kind, options }: FuzzRequest, seed: number): string {
  return `seed ${seed}, ${kind}: ${options.method} ${String(options.url).slice(0, 200)} ${String(options.payload ?? "").slice(0, 1_500)}`;
}

function patiently(answer: PromiseLike<LightMyRequestResponse>): Promise<LightMyRequestResponse> {
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`no answer within ${PATIENCE_MS} ms`)), PATIENCE_MS);
  });
  return Promise.race([answer, tooLong]).finally(() => clearTimeout(timer));
}

/** Puts `inputs` requests to the service, as many at a time as it has workers and two more. Input n has the seed `seed + n`. */
export async function fuzz({ seed, inputs, workers }: Fuzzing): Promise<FuzzReport> {
  let workersLost = 0;
  const pool = new WorkerPool(workers);
  const app = await buildApp({ logLevel: "silent", workers, trustProxy: false, pool });
  pool.observe({
    workerLost: () => {
      workersLost++;
    },
  });
  const statuses = new Map<string, number>();
  const faults: string[] = [];
  let next = 0;
  let slowestMs = 0;
  let slowest = "";
  const count = (name: string) => statuses.set(name, (statuses.get(name) ?? 0) + 1);
  const takeTurns = async () => {
    while (next < inputs) {
      const ownSeed = seed + next++;
      const request = requestFrom(new Random(ownSeed));
      const began = performance.now();
      const fault = await patiently(app.inject(request.options))
        .then((answer) => {
          count(`${request.kind} ${answer.statusCode}`);
          return faultIn(request.options, answer);
        })
        .catch((error: Error) => `${error.name}: ${error.message}`);
      const took = performance.now() - began;
      if (took > slowestMs) [slowestMs, slowest] = [took, describeRequest(request, ownSeed)];
      if (fault !== undefined && faults.length < MAX_FAULTS_TOLD)
        faults.push(`${fault}\n  ${describeRequest(request, ownSeed)}`);
    }
  };
  await Promise.all(Array.from({ length: workers + 2 }, takeTurns));
  await app.close();
  return { statuses, faults, workersLost, slowestMs, slowest };
}
