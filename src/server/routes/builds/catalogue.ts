import { PLAN_OPTIONS } from "../../../build-file/plans/choices/plan-options.ts";
import { sourcesOf } from "../../../build-file/sources/sources.ts";
import { type CatalogueAnswer, catalogueAnswerSchema } from "../../../contract/catalogue.ts";
import { CACHED_FOR_A_WHILE } from "../../http/answers/caching.ts";
import { WHOLE_CATALOGUE } from "../../shelves/whole-catalogue.ts";
import type { App } from "../route-context.ts";

// The catalogue is constant data of the service's own; the schema is for the reader of the OpenAPI document.
const ANSWER = {
  ...WHOLE_CATALOGUE,
  planOptions: PLAN_OPTIONS,
  sources: sourcesOf(WHOLE_CATALOGUE),
} as unknown as CatalogueAnswer;

export async function catalogueRoutes(app: App): Promise<void> {
  app.get(
    "/api/catalogue",
    {
      schema: {
        summary: "Generic pickup values by type, customary parts and plans, contact tables of switches",
        tags: ["builds"],
        response: { 200: catalogueAnswerSchema },
      },
    },
    async (_request, reply) => {
      reply.header("cache-control", CACHED_FOR_A_WHILE);
      return ANSWER;
    },
  );
}
