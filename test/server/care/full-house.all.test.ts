import { describe, expect, test } from "vitest";
import { WorkerPool } from "../../../src/server/work/worker-pool.ts";
import { call, listening, open, serviceWith, until } from "../loopback.ts";
import { LONG_SET, PLAN } from "../plan.ts";

const CURVE = { build: PLAN, settings: {}, frequencies: [1000] };

function expectProblem(answer: { status: number; headers: Record<string, unknown>; body: Buffer }, status: number) {
  expect(answer.status).toBe(status);
  expect(answer.headers["content-type"]).toContain("application/problem+json");
  expect(Number(answer.headers["retry-after"])).toBeGreaterThan(0);
  expect(answer.headers["cache-control"]).toBe("no-store");
  expect(JSON.parse(answer.body.toString())).toMatchObject({ status });
}

describe("a client that asks for too much at a time", () => {
  test("is told 429 and when to come back, while another client is served", async () => {
    const pool = new WorkerPool(2);
    const gate = { perClient: 2, renders: 10, sets: 10 };
    const app = await serviceWith({ pool, trustProxy: 1, protection: { gate } });
    const port = await listening(app);
    const greedy = { "x-forwarded-for": "192.0.2.1" };
    const path = "/api/previews";
    const sets = [1, 2].map(() => open({ port, path, headers: greedy, body: LONG_SET }));
    await until(() => pool.jobsRunning === 1, "a set is being rendered");
    expectProblem(await call({ port, path: "/api/response", headers: greedy, body: CURVE }), 429);
    const other = { "x-forwarded-for": "192.0.2.2" };
    expect((await call({ port, path: "/api/preview", headers: other, body: { build: PLAN } })).status).toBe(200);
    for (const { request } of sets) request.destroy();
    await until(() => pool.jobsRunning === 0, "the sets are given up");
    expect((await call({ port, path: "/api/response", headers: greedy, body: CURVE })).status).toBe(200);
  });

  test("gets 429 beyond its requests a minute, and the health checks do not count", async () => {
    const app = await serviceWith({ protection: { requestsPerMinute: 3 } });
    for (let n = 0; n < 5; n++) {
      for (const url of ["/healthz", "/readyz", "/metrics"]) expect((await app.inject(url)).statusCode).toBe(200);
    }
    for (let n = 0; n < 3; n++) expect((await app.inject("/api/signals")).statusCode).toBe(200);
    const refused = await app.inject("/api/signals");
    expectProblem({ status: refused.statusCode, headers: refused.headers, body: refused.rawPayload }, 429);
    expect(refused.json().detail).toContain("at most 3 requests a minute");
  });

  test("is bounded in every call that renders, solves or reads a build, and in no other", async () => {
    const app = await serviceWith({ protection: { gate: { perClient: 0, renders: 1, sets: 1 } } });
    const { paths } = (await app.inject("/api/openapi.json")).json() as { paths: Record<string, object> };
    const calls = Object.entries(paths).flatMap(([url, operations]) =>
      Object.keys(operations).map((method) => ({ url, method: method.toUpperCase() as "GET" | "POST" })),
    );
    const bounded: string[] = [];
    for (const { url, method } of calls)
      if ((await app.inject({ url, method })).statusCode === 429) bounded.push(`${method} ${url}`);
    const expected = calls.filter(({ url, method }) => method === "POST" || url.endsWith(".wav"));
    expect(expected.length).toBeGreaterThan(10);
    expect(bounded).toEqual(expected.map(({ url, method }) => `${method} ${url}`));
  });

  test("is known by its network where the address is IPv6", async () => {
    const app = await serviceWith({ trustProxy: 1, protection: { requestsPerMinute: 2 } });
    const ask = (address: string) => app.inject({ url: "/api/signals", headers: { "x-forwarded-for": address } });
    await ask("2001:db8:1:2::1");
    await ask("2001:db8:1:2:ffff::2");
    expect((await ask("2001:db8:1:2:3:4:5:6")).statusCode).toBe(429);
    expect((await ask("2001:db8:1:3::1")).statusCode).toBe(200);
  });

  test("leaves no trace of its limits in answers that others may get from a cache", async () => {
    const app = await serviceWith({ protection: { requestsPerMinute: 3 } });
    const names = Object.keys((await app.inject("/api/signals")).headers);
    expect(names.filter((name) => /ratelimit|retry/.test(name))).toEqual([]);
  });
});

describe("a full service", () => {
  test("says 503 and when to come back, stays alive, and serves again when there is room", async () => {
    const pool = new WorkerPool(1);
    const app = await serviceWith({ pool, protection: { gate: { perClient: 10, renders: 1, sets: 1 } } });
    const port = await listening(app);
    const set = open({ port, path: "/api/previews", body: LONG_SET });
    await until(() => pool.jobsRunning === 1, "the set is being rendered");
    expectProblem(await call({ port, path: "/api/preview", body: { build: PLAN } }), 503);
    expect((await call({ port, path: "/healthz", method: "GET" })).status).toBe(200);
    set.request.destroy();
    await until(() => pool.jobsRunning === 0, "the set is given up");
    expect((await call({ port, path: "/api/preview", body: { build: PLAN } })).status).toBe(200);
  });

  test("bounds sets by themselves, since each holds sound in memory", async () => {
    const pool = new WorkerPool(2);
    const app = await serviceWith({ pool, protection: { gate: { perClient: 10, renders: 10, sets: 1 } } });
    const port = await listening(app);
    const set = open({ port, path: "/api/previews", body: LONG_SET });
    await until(() => pool.jobsRunning > 0, "the set is being rendered");
    expectProblem(await call({ port, path: "/api/previews", body: LONG_SET }), 503);
    expect((await call({ port, path: "/api/response", body: CURVE })).status).toBe(200);
    set.request.destroy();
  });

  test("is not filled by uploads that do not come", async () => {
    const app = await serviceWith({ protection: { gate: { perClient: 10, renders: 1, sets: 1 } } });
    const port = await listening(app);
    const headers = { "content-type": "multipart/form-data; boundary=x", "content-length": "100000" };
    const slow = open({ port, path: "/api/preview", headers, unfinished: true });
    slow.request.write("--x\r\n");
    expect((await call({ port, path: "/api/preview", body: { build: PLAN } })).status).toBe(200);
    slow.request.destroy();
  });
});
