import { z } from "zod";
import { strict } from "../../../build-file/zod-tools.ts";
import {
  allowancesField,
  auditAnswer,
  drawerField,
  impedancesAnswer,
  partsListAnswer,
  phaseAnswer,
  probesField,
  readingsAnswer,
  sheetAnswer,
  solvedAnswer,
  solveField,
  temperatureField,
} from "../../../contract/bench-schemas.ts";
import { buildField } from "../../../contract/fields.ts";
import { callerOf } from "../../care/caller.ts";
import { problemSchema } from "../../http/problems.ts";
import { readBuildAt } from "../../http/validation.ts";
import type { App, RouteContext } from "../route-context.ts";

const bodySchema = strict({
  build: buildField,
  temperature: temperatureField,
  probes: probesField,
  solve: solveField.optional(),
  allowances: allowancesField,
  drawer: drawerField,
});

/** What `/api/bench` answers. */
export const benchAnswerSchema = z.strictObject({
  audit: auditAnswer,
  ...readingsAnswer,
  impedances: impedancesAnswer,
  sheet: sheetAnswer,
  partsList: partsListAnswer,
  phaseCheck: phaseAnswer,
  solved: solvedAnswer,
});

export async function benchRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/bench",
    {
      schema: {
        summary: "What the bench needs: audit, meter readings, build sheet, parts list, phase check",
        tags: ["bench"],
        body: bodySchema,
        response: { 200: benchAnswerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => {
      const job = { ...request.body, build: readBuildAt("build", request.body.build) };
      return runJob("bench", job, callerOf(request, reply));
    },
  );
}
