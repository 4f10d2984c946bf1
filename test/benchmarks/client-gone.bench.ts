import { request as httpRequest } from "node:http";
import type { AddressInfo } from "node:net";
import { expect, test } from "vitest";
import { buildApp } from "../../src/server/app.ts";
import { WorkerPool } from "../../src/server/work/worker-pool.ts";
import { PLAN } from "../server/plan.ts";

const dials = (count: number) => Array.from({ length: count }, (_, index) => (10 * index) / count);
const WORK: readonly [path: string, body: object][] = [
  ["/api/previews", { build: PLAN, signal: "strum", rate: 48_000 }],
  ["/api/previews", { build: PLAN, signal: "sweep", rate: 192_000, sweep: { tone: dials(100) } }],
  ["/api/preview", { build: PLAN, signal: "strum", rate: 192_000, hum: 50 }],
  ["/api/response", { build: PLAN, sweep: { tone: dials(100), volume: dials(10) }, frequencies: { count: 1_000 } }],
  ["/api/tolerance", { build: PLAN, draws: 20_000 }],
  ["/api/compare", { builds: [PLAN, { ...PLAN, title: "B" }] }],
  ["/api/table", { build: PLAN }],
];
const TRIES = 12;

test("work stops within 100 ms of its caller leaving", async () => {
  const pool = new WorkerPool(1);
  const app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false, pool });
  await app.listen({ host: "127.0.0.1", port: 0 });
  const { port } = app.server.address() as AddressInfo;
  const stopsIn = async (path: string, body: object, afterMs: number): Promise<number | undefined> => {
    const headers = { "content-type": "application/json" };
    const sent = httpRequest({ host: "127.0.0.1", port, path, method: "POST", headers });
    sent.on("error", () => {});
    sent.end(JSON.stringify(body));
    while (pool.jobsRunning === 0) await new Promise((resolve) => setTimeout(resolve, 1));
    await new Promise((resolve) => setTimeout(resolve, afterMs));
    if (pool.jobsRunning === 0) return undefined;
    const left = performance.now();
    sent.destroy();
    while (pool.jobsRunning > 0) await new Promise((resolve) => setImmediate(resolve));
    return performance.now() - left;
  };
  let worst = 0;
  for (const [path, body] of WORK) {
    const times: number[] = [];
    for (let n = 0; n < TRIES; n++) {
      const time = await stopsIn(path, body, 20 + n * 60);
      if (time !== undefined) times.push(time);
    }
    times.sort((a, b) => a - b);
    const most = times.at(-1) ?? 0;
    console.log(
      `${path}: ${times.length} left, median ${times[times.length >> 1]?.toFixed(1)} ms, most ${most.toFixed(1)} ms`,
    );
    worst = Math.max(worst, most);
  }
  await app.close();
  expect(worst).toBeLessThan(100);
});
