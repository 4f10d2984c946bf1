import * as z from "zod";

export const turnsAnswer = z
  .array(
    z.object({
      part: z.string(),
      turn: z.number().describe("degrees counter-clockwise as seen from the back, for the part's `place`"),
      clock: z.string().describe("where its lugs point then, seen from the back, the treble side up"),
      metresSaved: z.number().describe("metres by which the wires are shorter for this turn alone"),
      why: z.string(),
    }),
  )
  .describe("pots to be turned before anything is soldered, so that all wires together are shortest");
