import type { FastifyRequest } from "fastify";

/** An orchestrator and a monitor must hear from a service that refuses everybody else. */
const ALWAYS_ANSWERED: ReadonlySet<string | undefined> = new Set(["/healthz", "/metrics"]);

export const answersAlways = (request: FastifyRequest): boolean => ALWAYS_ANSWERED.has(request.routeOptions.url);
