import { totalmem } from "node:os";
import rateLimit from "@fastify/rate-limit";
import underPressure from "@fastify/under-pressure";
import type { FastifyRequest } from "fastify";
import { MAX_EVENT_LOOP_DELAY_MS, MAX_MEMORY_FRACTION } from "../../limits.ts";
import type { App } from "../routes/route-context.ts";
import { ServiceBusy } from "../work/job-failures.ts";
import { clientOf } from "./client.ts";
import { TooManyRequests } from "./refusals.ts";
import { type GateBounds, guardRenders } from "./render-gate.ts";

export interface Protection {
  /** Of one client; absent for no bound. */
  readonly requestsPerMinute?: number | undefined;
  /** Whether to refuse work while the event loop or the memory is behind. */
  readonly shedLoad?: boolean | undefined;
  readonly gate?: GateBounds | undefined;
}

/** An orchestrator and a monitor must hear from a service that refuses everybody else. */
const ALWAYS_ANSWERED: ReadonlySet<string | undefined> = new Set(["/healthz", "/metrics"]);
const answersAlways = (request: FastifyRequest) => ALWAYS_ANSWERED.has(request.routeOptions.url);

/** A container's own bound where it has one, else the machine's memory. */
function availableBytes(): number {
  const constrained = process.constrainedMemory();
  return constrained > 0 ? Math.min(constrained, totalmem()) : totalmem();
}

async function limitRate(app: App, requestsPerMinute: number): Promise<void> {
  const silent = { "x-ratelimit-limit": false, "x-ratelimit-remaining": false, "x-ratelimit-reset": false } as const;
  await app.register(rateLimit, {
    max: requestsPerMinute,
    timeWindow: 60_000,
    keyGenerator: (request) => clientOf(request.ip),
    allowList: (request) => answersAlways(request) || request.routeOptions.url === "/readyz",
    // Counters in the headers of a cacheable answer would be one client's, told to another.
    addHeaders: { ...silent, "retry-after": true },
    addHeadersOnExceeding: silent,
    errorResponseBuilder: () => new TooManyRequests(`expected at most ${requestsPerMinute} requests a minute`),
  });
}

async function shedLoad(app: App): Promise<void> {
  await app.register(underPressure, {
    maxEventLoopDelay: MAX_EVENT_LOOP_DELAY_MS,
    maxRssBytes: availableBytes() * MAX_MEMORY_FRACTION,
    pressureHandler: async (request: FastifyRequest) => {
      if (!answersAlways(request)) throw new ServiceBusy();
    },
  });
}

/** Keeps the service up and quick for everyone when somebody asks for too much. */
export async function registerProtection(app: App, protection: Protection): Promise<void> {
  if (protection.shedLoad) await shedLoad(app);
  if (protection.requestsPerMinute) await limitRate(app, protection.requestsPerMinute);
  guardRenders(app, protection.gate);
}
