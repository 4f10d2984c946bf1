import { impulseQuerySchema } from "../../../contract/impulse.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { wavAnswer } from "../../../contract/sound-fields.ts";
import { callerOf } from "../../care/caller.ts";
import { sendBytes } from "../../http/answers/byte-ranges.ts";
import { isFresh, tagOfAddress } from "../../http/answers/caching.ts";
import { undoHeader } from "../../http/preview-headers.ts";
import { impulseJob } from "../../jobs/sound/impulse.ts";
import type { App, RouteContext } from "../route-context.ts";

export async function impulseRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.get(
    "/api/impulse.wav",
    {
      config: { gate: impulseJob.gate },
      schema: {
        summary: "A setting's filter as an impulse response (float32 WAV) for any convolver",
        tags: ["sound"],
        querystring: impulseQuerySchema,
        response: { 200: wavAnswer, 206: wavAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const job = impulseJob.read(request.query);
      if (isFresh(request, reply, tagOfAddress(request.url))) return reply.code(304).send();
      const impulse = await runJob("impulse", job, callerOf(request, reply));
      reply.header("presolder-delay-samples", String(impulse.delaySamples));
      if (job.over) reply.headers(undoHeader(impulse.limits));
      return sendBytes(request, reply.type("audio/wav"), impulse.wav);
    },
  );
}
