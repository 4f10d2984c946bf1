import type { FastifyRequest } from "fastify";

/** Aborts when the caller closes the connection before the answer has gone out. */
export function whenClientLeaves(
  request: FastifyRequest,
  reply: { raw: NodeJS.EventEmitter & { writableFinished: boolean } },
): AbortSignal {
  const controller = new AbortController();
  reply.raw.once("close", () => {
    if (!reply.raw.writableFinished) controller.abort();
  });
  if (request.raw.destroyed && request.raw.errored) controller.abort();
  return controller.signal;
}
