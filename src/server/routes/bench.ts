import { z } from "zod";
import { benchSheet } from "../../bench/bench-sheet.ts";
import { strict } from "../../build/zod-tools.ts";
import { probesField, readingsAnswer, solvedAnswer, solveField, temperatureField } from "../bench-schemas.ts";
import { problemSchema } from "../problems.ts";
import { buildField } from "../request-schemas.ts";
import type { App } from "../route-context.ts";
import { readBuildAt } from "../validation.ts";

const bodySchema = strict({
  build: buildField,
  temperature: temperatureField,
  probes: probesField,
  solve: solveField.optional(),
});

const answerSchema = z.object({ ...readingsAnswer, solved: solvedAnswer });

export async function benchRoutes(app: App): Promise<void> {
  app.post(
    "/api/bench",
    {
      schema: {
        summary: "Meter readings of a build",
        tags: ["bench"],
        body: bodySchema,
        response: { 200: answerSchema, "4xx": problemSchema },
      },
    },
    async (request) => benchSheet(readBuildAt("build", request.body.build), request.body),
  );
}
