import { z } from "zod";
import { strict } from "../../../build-file/zod-tools.ts";
import { diagnosisAnswer, measuredField, symptomField, temperatureField } from "../../../contract/bench-schemas.ts";
import { buildField } from "../../../contract/fields.ts";
import { MAX_PROBES, MAX_SYMPTOMS } from "../../../limits.ts";
import { callerOf } from "../../care/caller.ts";
import { problemSchema } from "../../http/problems.ts";
import { readBuildAt } from "../../http/validation.ts";
import type { App, RouteContext } from "../route-context.ts";

const bodySchema = strict({
  build: buildField,
  readings: z
    .array(measuredField)
    .max(MAX_PROBES)
    .default([])
    .describe("what a meter showed, nothing plugged in; any of the readings of /api/bench, or across any two lugs"),
  symptoms: z
    .array(symptomField)
    .max(MAX_SYMPTOMS)
    .default([])
    .describe("what was heard or felt; weighed together with the readings"),
  temperature: temperatureField,
});

export async function diagnoseRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/diagnose",
    {
      schema: {
        summary: "What may be wrong with a guard, ranked by how well it explains the readings",
        tags: ["bench"],
        body: bodySchema,
        response: { 200: diagnosisAnswer, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const { readings, symptoms, temperature } = request.body;
      const job = { build: readBuildAt("build", request.body.build), readings, symptoms, temperature };
      return runJob("diagnose", job, callerOf(request, reply));
    },
  );
}
