import type { FastifyRequest } from "fastify";
import { MAX_REQUESTS_UNDER_WAY } from "../../limits.ts";
import type { App } from "../routes/route-context.ts";
import { ServiceBusy } from "../work/job-failures.ts";
import { answersAlways } from "./always-answered.ts";
import { clientOf } from "./client.ts";
import { Counter } from "./counter.ts";
import { whenClosed } from "./when-closed.ts";

declare module "fastify" {
  interface FastifyRequest {
    /** The only request under way of somebody at this very machine: never told that the service is busy. */
    isLoneLocal: boolean;
  }
}

const LOOPBACK = /^127\.|^::1$/;
const ALL = "all";

/** By both addresses: a proxy at this machine speaks for others, and what it tells of them could be made up. */
function isLocal(request: FastifyRequest): boolean {
  const peer = request.socket.remoteAddress;
  return LOOPBACK.test(clientOf(request.ip)) && (peer === undefined || LOOPBACK.test(clientOf(peer)));
}

/**
 * Refuses, with 503, what comes on top of very many requests under way. These are counted, and no delay is measured: a machine
 * that is busy with something else makes everything late, though nothing waits here.
 */
export function boundRequestsUnderWay(app: App, most: number = MAX_REQUESTS_UNDER_WAY): void {
  const counter = new Counter();
  app.decorateRequest("isLoneLocal", false);
  app.addHook("onRequest", async (request, reply) => {
    const name = `client ${clientOf(request.ip)}`;
    const isFirst = counter.enter(name, 1);
    if (!isFirst) counter.enter(name, Number.POSITIVE_INFINITY);
    const fits = counter.enter(ALL, most);
    whenClosed(reply, () => {
      counter.leave(name);
      if (fits) counter.leave(ALL);
    });
    request.isLoneLocal = isFirst && isLocal(request);
    if (!fits && !request.isLoneLocal && !answersAlways(request)) throw new ServiceBusy();
  });
}
