import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { MAX_WORKER_HEAP_MIB } from "../../../src/limits.ts";
import { problemOf } from "../../../src/server/http/problems.ts";
import { JobStopped, WorkerOutOfMemory } from "../../../src/server/work/job-failures.ts";
import { WorkerPool } from "../../../src/server/work/worker-pool.ts";
import { thoroughly } from "../../effort.ts";
import { call, listening, open, serviceWith, until } from "../loopback.ts";
import { LONG_SET, PLAN } from "../plan.ts";
import { startService } from "../process.ts";

const SHORT_SET = { build: PLAN, signal: "strum", sweep: { tone: [0, 5, 10] } };

describe("a worker that is killed in the middle of its work", { retry: 1 }, () => {
  test("costs its request nothing: the work is done by the next one", async () => {
    const pool = new WorkerPool(1);
    const port = await listening(await serviceWith({ pool }));
    const { answer } = open({ port, path: "/api/previews", body: SHORT_SET });
    await until(() => pool.jobsRunning > 0 && pool.threads.length > 0, "the set is being rendered");
    await pool.threads[0]!.terminate();
    const { status, body } = await answer;
    expect(status).toBe(200);
    expect(Object.keys(unzipSync(body)).filter((name) => name.endsWith(".wav"))).toHaveLength(3);
  });

  test("costs its request a clean 503 where the second is killed too, and the next request is served", async () => {
    const pool = new WorkerPool(1);
    const app = await serviceWith({ pool });
    const port = await listening(app);
    const { answer } = open({ port, path: "/api/previews", body: LONG_SET });
    await until(() => pool.jobsRunning > 0 && pool.threads.length > 0, "the set is being rendered");
    const first = pool.threads[0]!;
    await first.terminate();
    await until(() => pool.threads.length > 0 && pool.threads[0] !== first, "another worker has begun");
    // Whichever job it has begun, and however long it loads: another loss of the set's own work comes sooner or later.
    let pause = 200;
    let answered = false;
    void answer.then(() => {
      answered = true;
    });
    while (!answered) {
      await pool.threads[0]?.terminate();
      await new Promise((resolve) => setTimeout(resolve, pause));
      pause *= 1.5;
    }
    const { status, headers, body } = await answer;
    expect([status, JSON.parse(body.toString()).status]).toEqual([503, 503]);
    expect(headers["content-type"]).toContain("application/problem+json");
    expect((await call({ port, path: "/api/preview", body: { build: PLAN } })).status).toBe(200);
    const metrics = (await app.inject("/metrics")).payload;
    expect(Number(/^presolder_workers_lost_total (\d+)/m.exec(metrics)?.[1])).toBeGreaterThanOrEqual(2);
  });

  test("does not end the service where it was idle", async () => {
    const pool = new WorkerPool(1);
    const app = await serviceWith({ pool });
    await app.inject("/readyz");
    await pool.threads[0]!.terminate();
    expect((await app.inject("/readyz")).statusCode).toBe(200);
  });
});

describe("work that wants more memory than a worker may have", () => {
  test("ends its worker and not the service, and the next work is done", async () => {
    const pool = new WorkerPool(1, { maxHeapMib: 32, filename: resolve("test/server/work/hungry-worker.js") });
    await expect(pool.run("impulse", {} as never)).rejects.toBeInstanceOf(WorkerOutOfMemory);
    expect(await pool.run("ready", null)).toBe(true);
    await pool.close();
  });

  test("is told that, as a fault of the service and not of the input", () => {
    expect(problemOf(new WorkerOutOfMemory())).toMatchObject({
      status: 500,
      detail: expect.stringContaining("memory"),
    });
  });

  test("finds every worker of the service bounded", async () => {
    const pool = new WorkerPool(1);
    await pool.run("ready", null);
    expect(pool.threads[0]!.resourceLimits?.maxOldGenerationSizeMb).toBe(MAX_WORKER_HEAP_MIB);
    await pool.close();
  });
});

describe("a caller who leaves", () => {
  test("is noticed: the work ends, waiting work is never begun, and the figures tell", async () => {
    const pool = new WorkerPool(1);
    const app = await serviceWith({ pool });
    const port = await listening(app);
    const sets = [1, 2, 3].map(() => open({ port, path: "/api/previews", body: LONG_SET }));
    await until(() => pool.jobsRunning === 1 && pool.jobsWaiting >= 2, "one set is rendered and others wait");
    for (const { request } of sets) request.destroy();
    await until(() => pool.jobsRunning + pool.jobsWaiting === 0, "all work is given up");
    const metrics = (await app.inject("/metrics")).payload;
    expect(metrics).toContain("presolder_clients_gone_total 3");
    expect(metrics).toMatch(/presolder_job_seconds_count\{job="previewBatch",outcome="stopped"\} 3/);
    expect(metrics).not.toContain('job="previewBatch",outcome="done"');
  });
});

describe("a caller who leaves while the worker still loads", { retry: 1 }, () => {
  test("keeps the place until the worker has come to the work, so that no second queue grows behind it", async () => {
    const directory = mkdtempSync(join(tmpdir(), "late-worker-"));
    const mayLoad = join(directory, "may-load");
    process.env.LATE_WORKER_MAY_LOAD = mayLoad;
    const pool = new WorkerPool(1, { filename: resolve("test/server/work/late-worker.js") });
    const gone = new AbortController();
    const left = pool.run("impulse", {} as never, { signal: gone.signal });
    const next = pool.run("ready", null);
    await new Promise((resume) => setImmediate(resume));
    gone.abort();
    // Longer than work is given to stop by itself.
    await new Promise((resume) => setTimeout(resume, 200));
    expect([pool.jobsRunning, pool.jobsWaiting]).toEqual([1, 1]);
    writeFileSync(mayLoad, "");
    await expect(left).rejects.toBeInstanceOf(JobStopped);
    expect(await next).toBe("ready");
    await pool.close();
    rmSync(directory, { recursive: true });
  });
});

describe("SIGTERM", { retry: 1 }, () => {
  test("lets what is under way finish, refuses what is new, and ends in time", async () => {
    const { child, port, ended } = await startService();
    const set = open({ port, path: "/api/previews", body: { ...SHORT_SET, sweep: { tone: [0, 2, 4, 6, 8, 10] } } });
    const figures = async () => (await call({ port, path: "/metrics", method: "GET" })).body.toString();
    await until(async () => /^presolder_jobs_running [1-9]/m.test(await figures()), "the set is being rendered");
    child.kill("SIGTERM");
    await until(
      () =>
        call({ port, path: "/healthz", method: "GET" }).then(
          ({ status }) => status === 503,
          () => true,
        ),
      "new requests are refused",
    );
    const { status, body } = await set.answer;
    expect(status).toBe(200);
    expect(Object.keys(unzipSync(body)).filter((name) => name.endsWith(".wav"))).toHaveLength(6);
    expect(await ended).toBe(0);
  });

  // Ten seconds of grace to sit out.
  thoroughly("does not wait for ever for work that takes minutes", async () => {
    const { child, port, ended } = await startService({ environment: { WORKERS: "1" } });
    const set = open({ port, path: "/api/previews", body: LONG_SET });
    const figures = async () => (await call({ port, path: "/metrics", method: "GET" })).body.toString();
    await until(async () => /^presolder_jobs_running [1-9]/m.test(await figures()), "the set is being rendered");
    child.kill("SIGTERM");
    await expect(set.answer).rejects.toThrow();
    expect(await ended).toBe(1);
  });
});
