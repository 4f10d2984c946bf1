import * as z from "zod";
import { settingsAnswer } from "../answer-fields.ts";

export const auditAnswer = z
  .array(
    z.object({
      code: z.string().describe("stable name of the finding"),
      severity: z.enum(["fault", "warning", "note"]),
      lugs: z.array(z.string()),
      settings: z.array(settingsAnswer).describe("where it shows; none: everywhere"),
      message: z.string(),
      remedy: z.string(),
    }),
  )
  .describe("what the wiring shows to be wrong, worst first");
