import { z } from "zod";
import { problemSchema } from "../../http/problems.ts";
import type { App, RouteContext } from "../route-context.ts";

const healthSchema = z.object({ status: z.literal("ok") });

export async function healthRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.get(
    "/healthz",
    {
      logLevel: "warn",
      schema: { summary: "Whether the process answers", tags: ["health"], response: { 200: healthSchema } },
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
        response: { 200: healthSchema, 503: problemSchema },
      },
    },
    async (_request, reply) => {
      reply.header("cache-control", "no-store");
      await runJob("ready", null);
      return { status: "ok" as const };
    },
  );
}
