import { request as httpRequest } from "node:http";
import type { AddressInfo } from "node:net";
import { Writable } from "node:stream";
import { setTimeout as sleep } from "node:timers/promises";
import { afterEach, describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { expandSweep } from "../../../src/build-file/sweep.ts";
import { buildApp } from "../../../src/server/app.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { JobStopped } from "../../../src/server/work/job-failures.ts";
import { WorkerPool } from "../../../src/server/work/worker-pool.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { withFile } from "../service.ts";

const closing: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

async function service(options: Partial<Parameters<typeof buildApp>[0]> = {}): Promise<App> {
  const app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false, ...options });
  closing.push(() => app.close());
  return app;
}

const build = threeSingles({ rest: { title: "SECRET TITLE" } });

describe("health", () => {
  it("answers alive and ready", async () => {
    const app = await service();
    for (const url of ["/healthz", "/readyz"]) {
      const reply = await app.inject({ url });
      expect([reply.statusCode, reply.json(), reply.headers["cache-control"]]).toEqual([
        200,
        { status: "ok" },
        "no-store",
      ]);
    }
  });
});

describe("the page's headers", () => {
  it("allow no script but the service's own", async () => {
    const app = await service();
    const reply = await app.inject({ url: "/" });
    expect(reply.statusCode).toBe(200);
    const policy = String(reply.headers["content-security-policy"]);
    expect(policy).toContain("script-src 'self'");
    expect(policy).not.toContain("unsafe");
    expect(reply.headers["x-content-type-options"]).toBe("nosniff");
  });
});

describe("the log", () => {
  it("tells method, path and status, and nothing that a caller sent", async () => {
    const lines: string[] = [];
    const stream = new Writable({
      write(chunk, _encoding, done) {
        lines.push(String(chunk));
        done();
      },
    });
    const app = await service({ logLevel: "trace", logStream: stream });
    const { code } = (await app.inject({ method: "POST", url: "/api/link", payload: { build } })).json();
    await app.inject({ url: `/b/${code}` });
    await app.inject({ url: `/api/link/${code}` });
    await app.inject({ url: `/api/preview.wav?build=${code}&signal=click&tone=3` });
    const wav = encodeWav({ sampleRateHz: 8000, channels: [Float32Array.of(0.5)] }, "pcm16");
    await app.inject({ method: "POST", url: "/api/preview", ...withFile({ build }, wav, "SECRET-NAME.wav") });
    await app.inject({ method: "POST", url: "/api/response", payload: { build: { ...build, secretKey: 1 } } });
    const log = lines.join("");
    expect(log).toContain("/api/preview.wav");
    expect(log).toContain('"statusCode":400');
    expect(log).not.toMatch(/SECRET|secretKey|tone=3/);
    expect(log).not.toContain(code.slice(0, 40));
  });
});

describe("work that nobody waits for any more", () => {
  const guard = readBuild(build);
  const longJob = {
    build: guard,
    settings: expandSweep(new Controls(guard), { tone: Array.from({ length: 200 }, (_, i) => i / 20) }, { lever: 3 }),
    signal: { name: "sweep", sampleRateHz: 192_000 },
    level: "true" as const,
    encoding: "pcm16" as const,
    from: 0,
  };

  it("is stopped, and the worker takes the next job at once, its caches kept", async () => {
    const pool = new WorkerPool(1);
    closing.push(() => pool.close());
    await pool.run("ready", null);
    const leaving = new AbortController();
    const job = pool.run("previewBatch", longJob, { signal: leaving.signal });
    const refused = expect(job).rejects.toBeInstanceOf(JobStopped);
    await sleep(300);
    leaving.abort();
    await refused;
    await pool.run("ready", null);
  });

  it("is not begun where the caller has already left", async () => {
    const pool = new WorkerPool(1);
    closing.push(() => pool.close());
    await expect(pool.run("ready", null, { signal: AbortSignal.abort() })).rejects.toBeInstanceOf(JobStopped);
  });

  it("is stopped when a caller closes the connection", async () => {
    const app = await service();
    await app.listen({ host: "127.0.0.1", port: 0 });
    const { port } = app.server.address() as AddressInfo;
    const body = JSON.stringify({
      build,
      signal: "sweep",
      rate: 192_000,
      sweep: { tone: Array.from({ length: 101 }, (_, i) => i / 10) },
    });
    const headers = { "content-type": "application/json", "content-length": Buffer.byteLength(body) };
    const sent = httpRequest({ host: "127.0.0.1", port, path: "/api/previews", method: "POST", headers });
    sent.on("error", () => {});
    sent.end(body);
    await sleep(500);
    const started = performance.now();
    sent.destroy();
    // The only worker is free again long before the set would be done.
    expect((await app.inject({ url: "/readyz" })).statusCode).toBe(200);
    expect(performance.now() - started).toBeLessThan(10_000);
  });
});

describe("the event loop", () => {
  it("answers while a set is being rendered", async () => {
    const app = await service();
    const set = app.inject({ method: "POST", url: "/api/previews", payload: { build, signal: "noise" } });
    let served = 0;
    let done = false;
    void set.then(() => {
      done = true;
    });
    while (!done) {
      expect((await app.inject({ url: "/healthz" })).statusCode).toBe(200);
      served += 1;
      await sleep(5);
    }
    expect(served).toBeGreaterThan(10);
    expect((await set).statusCode).toBe(200);
  });
});
