import * as z from "zod";
import { settingsAnswer } from "../answer-fields.ts";

const kick = z.enum(["up", "down"]);

export const phaseCheckAnswer = z.object({
  how: z.array(z.string()),
  pickups: z.array(
    z.object({
      pickup: z.string(),
      coils: z.array(
        z.object({
          coil: z.string(),
          kick: kick.describe("with + on the finish; up is a forward coil over north, by definition"),
          humSign: z.number().describe("coils of opposite sign cancel each other's hum"),
        }),
      ),
      kickAtJack: kick.nullable().describe("where the pickup is loudest; null where it never is heard"),
      settings: settingsAnswer.nullable(),
      agrees: z.boolean().describe("whether it agrees, as wired, with the most of the others"),
      swap: z.array(z.tuple([z.string(), z.string()])).describe("leads to exchange where the needle disagrees"),
      metal: z.string().nullable().describe("what to do with its metal first"),
      message: z.string(),
    }),
  ),
});
