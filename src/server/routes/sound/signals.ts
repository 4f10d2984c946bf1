import { signalsAnswerSchema } from "../../../contract/signals.ts";
import { CHAIN_FIGURES } from "../../../listening/chain-figures.ts";
import { HAND_ENTRIES, STRING_ENTRIES } from "../../../render/playing.ts";
import { DEFAULT_SIGNAL, SIGNALS } from "../../../render/signals.ts";
import { CACHED_FOR_A_WHILE } from "../../http/answers/caching.ts";
import type { App } from "../route-context.ts";

export async function signalRoutes(app: App): Promise<void> {
  app.get(
    "/api/signals",
    { schema: { summary: "The built-in signals", tags: ["sound"], response: { 200: signalsAnswerSchema } } },
    async (_request, reply) => {
      reply.header("cache-control", CACHED_FOR_A_WHILE);
      return {
        default: DEFAULT_SIGNAL,
        signals: SIGNALS,
        hands: HAND_ENTRIES,
        strings: STRING_ENTRIES,
        listening: CHAIN_FIGURES,
      };
    },
  );
}
