import type { FastifyRequest, FastifyServerOptions } from "fastify";
import type { Config } from "../config.ts";

export type LogLevel = Config["logLevel"];

/** Link codes hold a whole build and queries hold its settings: of an address, only the path down to the code is logged. */
function addressWithoutUserText(url: string): string {
  return (url.split("?")[0] ?? "").replace(/^(\/b\/|\/api\/link\/).+/, "$1…").slice(0, 200);
}

/** Logs tell method, path, status and time; never a body, a sound, a query or a link code. */
export function loggerOptions(
  level: LogLevel,
  stream?: NodeJS.WritableStream,
): NonNullable<FastifyServerOptions["logger"]> {
  if (level === "silent") return false;
  return {
    level,
    ...(stream ? { stream } : {}),
    serializers: {
      req: (request: FastifyRequest) => ({ method: request.method, path: addressWithoutUserText(request.url) }),
      res: (reply) => ({ statusCode: reply.statusCode }),
    },
  };
}
