import type { FastifyRequest, FastifyServerOptions } from "fastify";
import type { Config } from "../../config.ts";

export type LogLevel = Config["logLevel"];

const NO_ROUTE = "none";

/**
 * The route that answers, with the names of its parameters and not their values. Paths nobody routed share one name: what a user
 * typed must be neither in a log nor in a figure's label.
 */
export function routeOf(request: FastifyRequest): string {
  return request.is404 ? NO_ROUTE : (request.routeOptions?.url ?? NO_ROUTE);
}

/** Where an error arose. Its message stays out: it may quote what somebody sent. */
function errorWithoutUserText(error: Error & { code?: unknown }): object {
  const frames = (error.stack ?? "").split("\n").filter((line) => /^\s+at /.test(line));
  return { type: error.name, code: error.code, stack: frames.join("\n") };
}

/** Logs tell method, route, status and time; never a body, a sound, a query, a link code or an error's message. */
export function loggerOptions(
  level: LogLevel,
  stream?: NodeJS.WritableStream,
): NonNullable<FastifyServerOptions["logger"]> {
  if (level === "silent") return false;
  return {
    level,
    ...(stream ? { stream: stream as never } : {}),
    serializers: {
      req: (request: FastifyRequest) => ({ method: request.method, route: routeOf(request) }),
      res: (reply) => ({ statusCode: reply.statusCode }),
      err: errorWithoutUserText as never,
      // @fastify/multipart tells the request's headers under this name, at level trace.
      busboyOptions: () => "…",
    },
  };
}
