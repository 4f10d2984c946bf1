import { stringLevelsAnswerSchema, stringLevelsRequestSchema } from "../../../contract/bench/string-levels.ts";
import { problemSchema } from "../../../contract/problem.ts";
import { callerOf } from "../../care/caller.ts";
import { readUpload } from "../../http/sound-upload.ts";
import { stringLevelsJob } from "../../jobs/bench/string-levels.ts";
import type { App, RouteContext } from "../route-context.ts";

const STRING_LEVELS =
  "A multipart form: the field `request` is the JSON, the field `signal` a WAV file of one position, its open strings plucked one after another, each let ring for a second and a half and damped before the next. Of a stereo file the louder channel counts. Refused with the reason and what to do: clipped, too short, too few plucks, plucks that overlap, noise.";

export async function stringLevelsRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/string-levels",
    {
      config: { gate: stringLevelsJob.gate },
      preValidation: readUpload,
      schema: {
        summary: "How loud each open string is, from a recording of one position",
        description: STRING_LEVELS,
        tags: ["bench"],
        consumes: ["multipart/form-data"],
        body: stringLevelsRequestSchema,
        response: { 200: stringLevelsAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const job = stringLevelsJob.read(request.body, request.upload);
      return runJob("stringLevels", job, callerOf(request, reply));
    },
  );
}
