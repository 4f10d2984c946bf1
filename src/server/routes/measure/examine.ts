import { examineAnswerSchema } from "../../../contract/examine/examine-answer.ts";
import { EXAMINE_FILES, examineRequestSchema } from "../../../contract/examine/examine-request.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { readUploads } from "../../http/sound-upload.ts";
import { examineJob } from "../../jobs/measure/examine.ts";
import type { App, RouteContext } from "../route-context.ts";

const EXAMINE =
  'A soldered guard, measured at its jack with an audio interface and held to its drawing. Asked with the build alone (JSON), it answers which takes to make. With takes it is a multipart form: the field `request` is the JSON, beside it the WAV files that its takes name (take1 and on), of /api/sweep.wav as it was played through a resistor into the jack and recorded before and behind it; `gain`, both channels on one point, makes them surer. It answers "as drawn", or what departs from the drawing, the likelier first, with what none of the takes can tell apart, the take or meter reading that would, and the parts\' values as the takes have them. Refused by name with the remedy: what /api/measure refuses, and takes whose setting or coil the guard has not. Turn the volume down before you play the signal: it is loud and shrill.';

export async function examineRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/examine",
    {
      config: { gate: examineJob.gate },
      preValidation: readUploads(EXAMINE_FILES),
      schema: {
        summary: "A finished guard, examined at its jack",
        description: EXAMINE,
        tags: ["measure"],
        consumes: ["application/json", "multipart/form-data"],
        body: examineRequestSchema,
        response: { 200: examineAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) =>
      runJob("examine", examineJob.read(request.body, request.uploads), callerOf(request, reply)),
  );
}
