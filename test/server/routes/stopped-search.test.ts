import { request as httpRequest } from "node:http";
import type { AddressInfo } from "node:net";
import { setTimeout as sleep } from "node:timers/promises";
import { afterEach, expect, it } from "vitest";
import { buildApp } from "../../../src/server/app.ts";
import { WorkerPool } from "../../../src/server/work/worker-pool.ts";
import { LARGE_DRAWER } from "../../choice/buildable/heaps.ts";

const closing: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

const WISHES = [1, 2, 3, 4, 5].map((position) => ({
  where: { kind: "position", position },
  asks: [{ word: position % 2 === 0 ? "glassy" : "dark" }],
}));

const SEARCHES = [
  ["/api/buildable", { drawer: LARGE_DRAWER }],
  ["/api/wanted", { wishes: WISHES }],
] as const;

it("a search ends, and its worker is free, where the caller goes before the answer", async () => {
  const pool = new WorkerPool(1);
  const app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false, pool });
  closing.push(() => app.close());
  await app.listen({ host: "127.0.0.1", port: 0 });
  const { port } = app.server.address() as AddressInfo;
  const headers = { "content-type": "application/json" };
  for (const [path, body] of SEARCHES) {
    const sent = httpRequest({ host: "127.0.0.1", port, path, method: "POST", headers });
    let isAnswered = false;
    sent.on("error", () => {});
    sent.on("response", () => {
      isAnswered = true;
    });
    sent.end(JSON.stringify(body));
    while (pool.jobsRunning === 0 && !isAnswered) await sleep(5);
    await sleep(100);
    expect([path, isAnswered, pool.jobsRunning]).toEqual([path, false, 1]);
    sent.destroy();
    await pool.run("ready", null);
    expect(pool.jobsRunning).toBe(0);
  }
  expect((await app.inject({ url: "/metrics" })).body).toContain("presolder_clients_gone_total 2");
});
