import { measureAnswerSchema, measureRequestSchema, RECORDINGS } from "../../../contract/measure/measure.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { readUploads } from "../../http/sound-upload.ts";
import { measureJob } from "../../jobs/measure/measure.ts";
import type { App, RouteContext } from "../route-context.ts";

const MEASURE =
  "A multipart form: the field `request` is the JSON, beside it the WAV files that the method needs, of /api/sweep.wav as it was played and recorded. two-loads: a small coil laid on the pickup plays the signal; `unloaded` is the pickup with nothing but the instrument across it, `loaded` with a known load besides, `second` with another. series-resistor: stereo files, one channel before a known resistor and one behind it; `measured` the part, `gain` both channels on one point, `open` no part, `short` the clips shorted. exciter: what metal about a pickup takes of its EMF; `unloaded` as in two-loads, with `loaded` or the coil's values given, and `referenceCoil` a coil without metal under the same exciter at the same output, or all through an integrator of known corner. Refused by name with the remedy: silence, another sound, cut short, a wrong rate, lost samples, clipping, gain that moves, swapped channels. Turn the volume down before you play it: the signal is loud and shrill.";

export async function measureRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/measure",
    {
      config: { gate: measureJob.gate },
      preValidation: readUploads(RECORDINGS),
      schema: {
        summary: "A pickup, a capacitor, a resistor or a lead, measured with a sound card",
        description: MEASURE,
        tags: ["measure"],
        consumes: ["multipart/form-data"],
        body: measureRequestSchema,
        response: { 200: measureAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) =>
      runJob("measure", measureJob.read(request.body, request.uploads), callerOf(request, reply)),
  );
}
