import { measuringSignalQuerySchema } from "../../../contract/measure/signal.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { wavAnswer } from "../../../contract/sound-fields.ts";
import { callerOf } from "../../care/caller.ts";
import { sendBytes } from "../../http/answers/byte-ranges.ts";
import { isFresh, tagOfAddress } from "../../http/answers/caching.ts";
import { measuringSignalJob } from "../../jobs/measure/measuring-signal.ts";
import type { App, RouteContext } from "../route-context.ts";

const SWEEP =
  "Sixteen seconds, peak 6 dB under full scale: marks that tell its start and the recorder's clock, a quiet stretch that tells noise and hum, and three passes 6 dB apart. Play it as it is, with no effect on, and record it with /api/measure in mind.";

export async function sweepRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.get(
    "/api/sweep.wav",
    {
      config: { gate: measuringSignalJob.gate },
      schema: {
        summary: "The measuring signal",
        description: SWEEP,
        tags: ["measure"],
        querystring: measuringSignalQuerySchema,
        response: { 200: wavAnswer, 206: wavAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      if (isFresh(request, reply, tagOfAddress(request.url))) return reply.code(304).send();
      const wav = await runJob("measuringSignal", request.query, callerOf(request, reply));
      return sendBytes(request, reply.type("audio/wav"), wav);
    },
  );
}
