import { monitorEventLoopDelay } from "node:perf_hooks";
import type { FastifyReply } from "fastify";
import { Counter, Gauge, Histogram, Registry } from "prom-client";
import type { App } from "../routes/route-context.ts";
import type { WorkerPool } from "../work/worker-pool.ts";
import { routeOf } from "./logging.ts";
import { whenClosed } from "./when-closed.ts";

/** The delay's own clock ticks so often (ms); a loop that is never late reads as one tick. */
const RESOLUTION_MS = 5;
const NANOSECONDS = 1e-9;
const BUCKETS_SECONDS = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60];
/** What caches may do with an answer. */
function cacheKind(reply: FastifyReply): "not-modified" | "cacheable" | "uncached" {
  if (reply.statusCode === 304) return "not-modified";
  return String(reply.getHeader("cache-control") ?? "").startsWith("public") ? "cacheable" : "uncached";
}

function observeRequests(app: App, register: Registry): void {
  const registers = [register];
  const requests = new Counter({
    name: "presolder_requests_total",
    help: "Answered requests",
    labelNames: ["method", "route", "status"],
    registers,
  });
  const seconds = new Histogram({
    name: "presolder_request_seconds",
    help: "Time from a request's first byte to its answer's last",
    labelNames: ["route"],
    buckets: BUCKETS_SECONDS,
    registers,
  });
  const caching = new Counter({
    name: "presolder_answers_total",
    help: "Answers by what their headers allow a cache: cacheable, not-modified (304) or uncached",
    labelNames: ["cache"],
    registers,
  });
  const inFlight = new Gauge({ name: "presolder_requests_in_flight", help: "Requests being answered", registers });
  const left = new Counter({
    name: "presolder_clients_gone_total",
    help: "Requests whose caller left before the answer was out",
    registers,
  });
  app.addHook("onRequest", async (_request, reply) => {
    inFlight.inc();
    whenClosed(reply, () => {
      inFlight.dec();
      if (!reply.raw.writableFinished) left.inc();
    });
  });
  app.addHook("onResponse", async (request, reply) => {
    const route = routeOf(request);
    requests.inc({ method: request.method, route, status: reply.statusCode });
    seconds.observe({ route }, reply.elapsedTime / 1_000);
    caching.inc({ cache: cacheKind(reply) });
  });
}

function observePool(pool: WorkerPool, register: Registry): void {
  const registers = [register];
  const jobs = new Histogram({
    name: "presolder_job_seconds",
    help: "Time that jobs held a worker, by outcome: done, refused (the input's fault), stopped (caller gone), failed",
    labelNames: ["job", "outcome"],
    buckets: BUCKETS_SECONDS,
    registers,
  });
  const waits = new Histogram({
    name: "presolder_queue_seconds",
    help: "Time that jobs waited for a worker",
    buckets: BUCKETS_SECONDS,
    registers,
  });
  const lost = new Counter({ name: "presolder_workers_lost_total", help: "Workers that ended unasked", registers });
  pool.observe({
    jobEnded(job, outcome, waitedMs, tookMs) {
      jobs.observe({ job, outcome }, tookMs / 1_000);
      waits.observe(waitedMs / 1_000);
    },
    workerLost: () => lost.inc(),
  });
  new Gauge({
    name: "presolder_queue_waiting",
    help: "Jobs waiting for a worker",
    registers,
    collect() {
      this.set(pool.jobsWaiting);
    },
  });
  new Gauge({
    name: "presolder_jobs_running",
    help: "Jobs in workers",
    registers,
    collect() {
      this.set(pool.jobsRunning);
    },
  });
}

/** The delay since the figures were last asked for. */
function observeProcess(app: App, register: Registry): void {
  const registers = [register];
  const delay = monitorEventLoopDelay({ resolution: RESOLUTION_MS });
  delay.enable();
  app.addHook("onClose", async () => void delay.disable());
  const beyondTick = (nanoseconds: number) => Math.max(0, nanoseconds * NANOSECONDS - RESOLUTION_MS / 1_000);
  new Gauge({
    name: "presolder_event_loop_delay_seconds",
    help: "How late the event loop was since the figures were last read",
    labelNames: ["quantile"],
    registers,
    collect() {
      for (const percent of [50, 99, 100]) {
        this.set({ quantile: percent / 100 }, delay.count === 0 ? 0 : beyondTick(delay.percentile(percent)));
      }
      delay.reset();
    },
  });
  new Gauge({
    name: "presolder_memory_bytes",
    help: "Memory of the process: resident, JavaScript heap in use, array buffers",
    labelNames: ["kind"],
    registers,
    collect() {
      const { rss, heapUsed, arrayBuffers } = process.memoryUsage();
      this.set({ kind: "resident" }, rss);
      this.set({ kind: "heap" }, heapUsed);
      this.set({ kind: "buffers" }, arrayBuffers);
    },
  });
  new Gauge({
    name: "presolder_cpu_seconds",
    help: "Processor time used by the process",
    registers,
    collect() {
      const { user, system } = process.cpuUsage();
      this.set((user + system) / 1e6);
    },
  });
}

/** Figures for a monitor at `GET /metrics`, in the Prometheus text format 0.0.4. */
export function registerMetrics(app: App, pool: WorkerPool): void {
  const register = new Registry();
  observeRequests(app, register);
  observePool(pool, register);
  observeProcess(app, register);
  app.get("/metrics", { logLevel: "warn", schema: { hide: true } }, async (_request, reply) => {
    reply.header("cache-control", "no-store").type(register.contentType);
    return reply.send(await register.metrics());
  });
}
