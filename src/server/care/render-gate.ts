import type { FastifyReply, FastifyRequest } from "fastify";
import { MAX_RENDERS, MAX_RENDERS_PER_CLIENT, MAX_SETS } from "../../limits.ts";
import type { App } from "../routes/route-context.ts";
import type { Gate } from "../work/job.ts";
import { ServiceBusy } from "../work/job-failures.ts";
import { clientOf } from "./client.ts";
import { Counter } from "./counter.ts";
import { TooManyRequests } from "./refusals.ts";
import { whenClosed } from "./when-closed.ts";

declare module "fastify" {
  interface FastifyContextConfig {
    /** The gate that requests of this route pass; without one they are let through. */
    readonly gate?: Gate;
  }
}

export interface GateBounds {
  readonly perClient: number;
  readonly renders: number;
  readonly sets: number;
}

const USUAL_BOUNDS: GateBounds = { perClient: MAX_RENDERS_PER_CLIENT, renders: MAX_RENDERS, sets: MAX_SETS };

const gateOf = (request: FastifyRequest) => request.routeOptions.config.gate;

/**
 * Bounds the work under way: for each client from its first byte, so that slow uploads count; for all of them together from the
 * moment there is work to do, so that slow uploads cannot shut others out. 429 and 503, both with Retry-After.
 */
export function guardRenders(app: App, bounds: GateBounds = USUAL_BOUNDS): void {
  const counter = new Counter();
  const heldBy = new WeakMap<FastifyReply["raw"], string[]>();
  const hold = (reply: FastifyReply, name: string, bound: number): boolean => {
    if (!counter.enter(name, bound)) return false;
    heldBy.get(reply.raw)!.push(name);
    return true;
  };
  app.addHook("onRequest", async (request, reply) => {
    if (!gateOf(request)) return;
    const held: string[] = [];
    heldBy.set(reply.raw, held);
    whenClosed(reply, () => {
      for (const name of held) counter.leave(name);
    });
    if (hold(reply, `client ${clientOf(request.ip)}`, bounds.perClient)) return;
    throw new TooManyRequests(`expected at most ${bounds.perClient} requests at a time from one client`);
  });
  app.addHook("preHandler", async (request, reply) => {
    if (!gateOf(request)) return;
    const fits =
      hold(reply, "renders", bounds.renders) && (gateOf(request) !== "set" || hold(reply, "sets", bounds.sets));
    if (!fits && !request.isLoneLocal) throw new ServiceBusy();
  });
}
