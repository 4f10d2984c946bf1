import * as z from "zod";

export const hardwareAnswer = z
  .array(
    z.object({
      what: z.string(),
      quantity: z.int().nullable().describe("null where the build cannot tell"),
      for: z.array(z.string()).describe("the parts that it is for; none where it is for the guard as a whole"),
      note: z.string().optional(),
    }),
  )
  .describe("screws, nuts, knobs and what is used up; wire is in the parts list");
