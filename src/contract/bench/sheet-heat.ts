import * as z from "zod";
import { DEFAULT_IRON } from "../../bench/sheet/heat/iron.ts";
import { SHEET_BOUNDS } from "../../bench/sheet/options.ts";
import { oneOf, strict } from "../../build-file/zod-tools.ts";

const [COOLEST, HOTTEST] = SHEET_BOUNDS.celsius;
const [WEAKEST, STRONGEST] = SHEET_BOUNDS.watts;

export const ironField = strict({
  celsius: z.number().min(COOLEST).max(HOTTEST).default(DEFAULT_IRON.celsius).describe("°C that the tip is set to"),
  watts: z.number().min(WEAKEST).max(STRONGEST).default(DEFAULT_IRON.watts),
  solder: oneOf(["leaded", "lead-free"]).default(DEFAULT_IRON.solder),
})
  .default(DEFAULT_IRON)
  .describe("the iron, for how long a joint wants it");

export const heatAnswer = z.object({
  heated: z.enum(["case", "lug", "splice", "claw"]),
  seconds: z
    .number()
    .nullable()
    .describe("until solder flows, from a lumped model; null where this iron never gets there"),
  lugCelsius: z.number().nullable().describe("°C of a pot's track by then; null where no pot is heated"),
  stopAfter: z.number().describe("seconds after which to stop and let it cool"),
  again: z.boolean().describe("whether the sitting before has soldered here"),
  text: z.string(),
});
