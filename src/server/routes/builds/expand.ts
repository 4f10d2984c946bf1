import { z } from "zod";
import { expandBuild } from "../../../build-file/expand.ts";
import { strict } from "../../../build-file/zod-tools.ts";
import { buildField, longFormJson } from "../../../contract/fields.ts";
import { problemSchema } from "../../http/problems.ts";
import type { App } from "../route-context.ts";

const answerSchema = z.object({ build: z.any().meta({ ...longFormJson, description: "The long form" }) });

export async function expandRoutes(app: App): Promise<void> {
  app.post(
    "/api/expand",
    {
      schema: {
        summary: "A plan as the long form that is wired from it; a long form as it is",
        tags: ["builds"],
        body: strict({ build: buildField }),
        response: { 200: answerSchema, "4xx": problemSchema },
      },
    },
    async (request) => ({ build: expandBuild(request.body.build) }),
  );
}
