import { z } from "zod";
import { CATALOGUE } from "../../../build-file/catalogue.ts";
import { SWITCH_TYPES, switchTable } from "../../../build-file/switch-types.ts";
import { CACHED_FOR_A_WHILE } from "../../http/caching.ts";
import type { App } from "../route-context.ts";

const entries = (meaning: string) => z.array(z.record(z.string(), z.unknown())).describe(meaning);

const answerSchema = z.object({
  pickups: entries("generic pickups: name, title, coils, and the basis of the values"),
  pots: entries("customary values"),
  toneCaps: entries("customary values"),
  trebleBleeds: entries("customary values"),
  cables: entries("capacitance a metre"),
  loads: entries("what a guitar is plugged into"),
  layouts: entries("what a plan's `layout` may be, its pickups, and how many volumes and tones it takes"),
  plans: entries("customary plans to start from: id, title, plan"),
  switches: entries("contact tables: type, lugs, and for each position the groups of joined lugs"),
  basis: z.record(z.string(), z.string()).describe("what each list rests on"),
});

const switches = SWITCH_TYPES.map((type) => ({ type, ...switchTable({ type }) }));
// The catalogue is constant data of the service's own; the schema is for the reader of the OpenAPI document.
const ANSWER = { ...CATALOGUE, switches } as unknown as z.output<typeof answerSchema>;

export async function catalogueRoutes(app: App): Promise<void> {
  app.get(
    "/api/catalogue",
    {
      schema: {
        summary: "Generic pickup values by type, customary parts and plans, contact tables of switches",
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
