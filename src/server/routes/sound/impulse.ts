import { z } from "zod";
import { DEFAULT_SAMPLE_RATE_HZ } from "../../../render/signals.ts";
import { callerOf } from "../../care/caller.ts";
import {
  addressQuery,
  codeField,
  rateInAddress,
  readCoded,
  requireWith,
  settingsInAddress,
} from "../../http/address-request.ts";
import { sendBytes } from "../../http/byte-ranges.ts";
import { isFresh, tagOfAddress } from "../../http/caching.ts";
import { undoHeader } from "../../http/preview-headers.ts";
import { problemSchema } from "../../http/problems.ts";
import type { App, RouteContext } from "../route-context.ts";
import { wavAnswer } from "./preview.ts";

/** Settings of the build to divide by are given as `over.lever=2`. */
const OVER_PREFIX = "over.";
const QUERY_KEYS = ["build", "rate", "coil", "over"];

const querySchema = addressQuery({
  build: codeField,
  rate: rateInAddress.default(DEFAULT_SAMPLE_RATE_HZ),
  coil: z.string().max(80).optional().describe("pickup.coil: this coil's own transfer, without its size and sign"),
  over: codeField
    .optional()
    .describe(
      "link code of a build to divide by, its settings as over.lever=2: turns a recording through it into one through build",
    ),
});

export async function impulseRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.get(
    "/api/impulse.wav",
    {
      schema: {
        summary: "A setting's filter as an impulse response (float32 WAV) for any convolver",
        tags: ["sound"],
        querystring: querySchema,
        response: { 200: wavAnswer, 206: wavAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { query } = request;
      const overSettings = settingsInAddress(query, QUERY_KEYS, OVER_PREFIX);
      const known = [...QUERY_KEYS, ...Object.keys(overSettings).map((key) => OVER_PREFIX + key)];
      const coded = readCoded("build", query.build, settingsInAddress(query, known), "query");
      const hasOver = query.over !== undefined;
      requireWith("over", hasOver || Object.keys(overSettings).length === 0, "is missing; over. settings need a build");
      requireWith("coil", !hasOver || query.coil === undefined, "expected coil or over, not both");
      const over = hasOver ? readCoded("over", query.over as string, overSettings, "query.over") : undefined;
      if (isFresh(request, reply, tagOfAddress(request.url))) return reply.code(304).send();
      const job = { ...coded, sampleRateHz: query.rate, coil: query.coil, over };
      const impulse = await runJob("impulse", job, callerOf(request, reply));
      reply.header("presolder-delay-samples", String(impulse.delaySamples));
      if (hasOver) reply.headers(undoHeader(impulse.limits));
      return sendBytes(request, reply.type("audio/wav"), impulse.wav);
    },
  );
}
