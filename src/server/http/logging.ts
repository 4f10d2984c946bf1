import type { FastifyRequest, FastifyServerOptions } from "fastify";
import type { Config } from "../../config.ts";

export type LogLevel = Config["logLevel"];

/** The route that answers, with the names of its parameters and not their values; a path nobody routed may be anything. */
function routeOf(request: FastifyRequest): string {
  return request.is404 ? "none" : (request.routeOptions?.url ?? "none");
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
