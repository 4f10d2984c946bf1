import * as z from "zod";
import type { Answered } from "./wire.ts";

export const signalsAnswerSchema = z.object({
  default: z.string(),
  signals: z.array(
    z.object({
      name: z.string(),
      title: z.string(),
      kind: z.enum(["phrase", "test"]).describe("a phrase is heard by every coil; a test signal drives all alike"),
      description: z.string(),
    }),
  ),
});

export type SignalsAnswer = Answered<typeof signalsAnswerSchema>;
