import { z } from "zod";
import { AUDIBILITIES } from "../../../choice/compare/verdict.ts";
import { featuresAnswer } from "../../../contract/choice-schemas.ts";
import { callerOf } from "../../care/caller.ts";
import { problemSchema } from "../../http/problems.ts";
import { searchBodySchema, searchJobOf } from "../../search-request.ts";
import type { App, RouteContext } from "../route-context.ts";

const scoreFields = {
  cost: z.number().describe("distance from the wish; see `costMeaning`"),
  says: z.string(),
};

const foundAnswer = z.object({
  ...scoreFields,
  values: z
    .array(
      z.object({
        name: z.string(),
        unit: z.enum(["farads", "ohms", "metres", "fraction"]),
        value: z.number().nullable().describe("null: left out"),
      }),
    )
    .readonly(),
  elsewhere: z
    .array(
      z.object({
        label: z.string(),
        loudnessDifference: z.number().describe("LU"),
        largest: z.object({
          difference: z.number().describe("dB, loudness matched"),
          frequency: z.number(),
          band: z.tuple([z.number(), z.number()]).readonly(),
        }),
        features: z.tuple([featuresAnswer, featuresAnswer]).readonly(),
        audible: z.enum(AUDIBILITIES),
        verdict: z.string(),
      }),
    )
    .readonly()
    .describe("what the choice changes in other settings, against the build as it stands"),
});

const answerSchema = z.object({
  combinations: z.number(),
  tried: z.int(),
  exhaustive: z.boolean(),
  method: z.string(),
  costMeaning: z.string(),
  now: z.object(scoreFields).nullable().describe("the build as it stands; null where the wish means nothing for it"),
  best: z.array(foundAnswer).readonly().describe("best first, at most ten"),
});

export async function searchRoutes(app: App, { runJob }: RouteContext): Promise<void> {
  app.post(
    "/api/search",
    {
      schema: {
        summary: "The values of free parts that come nearest to a wish, and what they cost elsewhere",
        tags: ["choice"],
        body: searchBodySchema,
        response: { 200: answerSchema, "4xx": problemSchema },
      },
    },
    async (request, reply) => runJob("search", searchJobOf(request.body), callerOf(request, reply)),
  );
}
