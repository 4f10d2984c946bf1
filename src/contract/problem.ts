import * as z from "zod";
import type { Answered } from "./wire.ts";

/** Problem details, RFC 9457. */
export const problemSchema = z
  .object({
    type: z.string().describe("stable name of the kind of problem"),
    title: z.string(),
    status: z.int(),
    detail: z.string().optional().describe("what was found and what was expected"),
    errors: z
      .array(z.object({ path: z.string().describe("dotted path of the field at fault"), message: z.string() }))
      .optional(),
  })
  .meta({ id: "Problem", description: "Problem details (RFC 9457)" });

export type Problem = Answered<typeof problemSchema>;
