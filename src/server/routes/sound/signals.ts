import { z } from "zod";
import { DEFAULT_SIGNAL, SIGNALS } from "../../../render/signals.ts";
import { CACHED_FOR_A_WHILE } from "../../http/caching.ts";
import type { App } from "../route-context.ts";

const answerSchema = z.object({
  default: z.string(),
  signals: z
    .array(
      z.object({
        name: z.string(),
        title: z.string(),
        kind: z.enum(["phrase", "test"]).describe("a phrase is heard by every coil; a test signal drives all alike"),
        description: z.string(),
      }),
    )
    .readonly(),
});

export async function signalRoutes(app: App): Promise<void> {
  app.get(
    "/api/signals",
    { schema: { summary: "The built-in signals", tags: ["sound"], response: { 200: answerSchema } } },
    async (_request, reply) => {
      reply.header("cache-control", CACHED_FOR_A_WHILE);
      return { default: DEFAULT_SIGNAL, signals: SIGNALS };
    },
  );
}
