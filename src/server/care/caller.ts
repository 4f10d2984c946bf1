import type { FastifyRequest } from "fastify";
import { clientOf } from "./client.ts";
import { whenClosed } from "./when-closed.ts";

/** Whom a job is for, as the worker pool wants to know it. */
export interface Caller {
  readonly client: string;
  /** Whether it is served however many wait. */
  readonly isLoneLocal: boolean;
  /** Aborts when the caller closes the connection before the answer has gone out. */
  readonly signal: AbortSignal;
}

export function callerOf(
  request: FastifyRequest,
  reply: { raw: NodeJS.EventEmitter & { writableFinished: boolean } },
): Caller {
  const controller = new AbortController();
  whenClosed(reply, () => {
    if (!reply.raw.writableFinished) controller.abort();
  });
  if (request.raw.destroyed && request.raw.errored) controller.abort();
  return { client: clientOf(request.ip), isLoneLocal: request.isLoneLocal, signal: controller.signal };
}
