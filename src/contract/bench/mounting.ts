import * as z from "zod";
import { ohmsAnswer } from "./meter-reading.ts";

const stepAnswer = z.object({
  title: z.string(),
  text: z.string(),
  parts: z.array(z.string()).describe("the parts concerned; none where it is of the guard as a whole"),
  readings: z
    .array(
      z.object({
        label: z.string(),
        low: ohmsAnswer,
        high: ohmsAnswer,
        shows: z.string().optional().describe("on the `meter` told"),
      }),
    )
    .optional()
    .describe("ohms, null where open; to be noted with the date"),
});

export const mountingAnswer = z
  .object({
    before: z.array(stepAnswer).describe("before the first wire"),
    closing: z.array(stepAnswer).describe("after the last joint"),
  })
  .describe("how the build's parts are fitted, and how the guard is closed");
