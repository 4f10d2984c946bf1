import { totalmem } from "node:os";
import rateLimit from "@fastify/rate-limit";
import underPressure from "@fastify/under-pressure";
import type { FastifyRequest } from "fastify";
import { MAX_MEMORY_FRACTION } from "../../limits.ts";
import type { App } from "../routes/route-context.ts";
import { ServiceBusy } from "../work/job-failures.ts";
import { answersAlways } from "./always-answered.ts";
import { clientOf } from "./client.ts";
import { TooManyRequests } from "./refusals.ts";
import { type GateBounds, guardRenders } from "./render-gate.ts";
import { type BodyPace, endSlowBodies } from "./slow-bodies.ts";
import { boundRequestsUnderWay } from "./under-way.ts";

export interface Protection {
  /** Of one client; absent for no bound. */
  readonly requestsPerMinute?: number | undefined;
  /** Of all clients, under way at a time. */
  readonly requestsUnderWay?: number | undefined;
  /** Of this process, above which work is refused; absent for no bound. */
  readonly memoryBytes?: number | undefined;
  readonly gate?: GateBounds | undefined;
  /** How fast a body must come. */
  readonly bodies?: BodyPace | undefined;
}

/** What this process may take of a container's own bound where it has one, else of the machine's memory. */
export function usualMemoryBytes(): number {
  const constrained = process.constrainedMemory();
  return MAX_MEMORY_FRACTION * (constrained > 0 ? Math.min(constrained, totalmem()) : totalmem());
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

async function boundMemory(app: App, maxRssBytes: number, forget: () => void): Promise<void> {
  await app.register(underPressure, {
    maxRssBytes,
    pressureHandler: async (request: FastifyRequest) => {
      forget();
      if (!answersAlways(request) && !request.isLoneLocal) throw new ServiceBusy();
    },
  });
}

/**
 * Keeps the service up and quick for everyone when somebody asks for too much.
 * @param forget what is kept for speed alone, called while memory is short
 */
export async function registerProtection(app: App, protection: Protection, forget: () => void): Promise<void> {
  boundRequestsUnderWay(app, protection.requestsUnderWay);
  if (protection.memoryBytes) await boundMemory(app, protection.memoryBytes, forget);
  if (protection.requestsPerMinute) await limitRate(app, protection.requestsPerMinute);
  endSlowBodies(app, protection.bodies);
  guardRenders(app, protection.gate);
}
