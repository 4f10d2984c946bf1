import { z } from "zod";
import { PICKUP_TYPES } from "../../build/catalogue/pickup-types.ts";
import { PLACES_BASIS } from "../../build/catalogue/sources.ts";
import { LAYOUT_NAMES } from "../../build/plans/layouts.ts";
import { PLAN_PRESETS } from "../../build/plans/presets.ts";
import { SWITCH_TYPES, switchTable } from "../../build/switch-types.ts";
import { CACHED_FOR_A_WHILE } from "../caching.ts";
import type { App } from "../route-context.ts";

const anyObject = z.record(z.string(), z.unknown());

const answerSchema = z.object({
  pickups: z.array(
    z.object({
      name: z.string(),
      title: z.string(),
      basis: z.string().describe("what the values rest on"),
      coils: z.record(z.string(), anyObject),
      usualPot: z.string(),
    }),
  ),
  placesBasis: z.string(),
  layouts: z.array(z.string()).describe("what a plan's `layout` may be"),
  plans: z
    .array(z.object({ id: z.string(), title: z.string(), plan: anyObject }))
    .describe("customary plans to start from"),
  switches: z.array(
    z.object({
      type: z.string(),
      lugs: z.array(z.string()),
      positions: z.array(z.array(z.array(z.string()))).describe("for each position, the groups of joined lugs"),
    }),
  ),
});

const ANSWER = {
  pickups: PICKUP_TYPES.map(({ name, title, basis, coils, usualPot }) => ({ name, title, basis, coils, usualPot })),
  placesBasis: PLACES_BASIS,
  layouts: LAYOUT_NAMES,
  plans: PLAN_PRESETS.map(({ id, title, plan }) => ({ id, title, plan })),
  switches: SWITCH_TYPES.map((type) => ({ type, ...switchTable({ type }) })),
} as unknown as z.output<typeof answerSchema>;

export async function catalogueRoutes(app: App): Promise<void> {
  app.get(
    "/api/catalogue",
    {
      schema: {
        summary: "Generic pickup values by type, customary plans, contact tables of switches",
        tags: ["builds"],
        response: { 200: answerSchema },
      },
    },
    async (_request, reply) => {
      reply.header("cache-control", CACHED_FOR_A_WHILE);
      return ANSWER;
    },
  );
}
