import { healthAnswerSchema } from "../../../contract/health.ts";
import { problemSchema } from "../../../contract/problem.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function healthRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.get(
    "/healthz",
    {
      logLevel: "warn",
      schema: { summary: "Whether the process answers", tags: ["health"], response: { 200: healthAnswerSchema } },
    },
    async (_request, reply) => {
      reply.header("cache-control", "no-store");
      return { status: "ok" as const };
    },
  );
  app.get(
    "/readyz",
    {
      logLevel: "warn",
      schema: {
        summary: "Whether a worker is up and takes work",
        tags: ["health"],
        response: { 200: healthAnswerSchema, 503: problemSchema },
      },
    },
    async (_request, reply) => {
      reply.header("cache-control", "no-store");
      await runJob("ready", null);
      return { status: "ok" as const };
    },
  );
}
