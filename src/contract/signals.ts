import * as z from "zod";
import { CHAINS } from "../listening/names.ts";
import { DEFAULT_HAND, DEFAULT_STRING_AGE, HAND_NAMES, STRING_AGES } from "../render/playing.ts";
import type { Answered } from "./wire.ts";

const waysOf = <const Names extends readonly [string, ...string[]]>(names: Names) =>
  z.array(z.object({ name: z.enum(names), title: z.string(), description: z.string() }));

export const signalsAnswerSchema = z.object({
  default: z.string(),
  signals: z.array(
    z.object({
      name: z.string(),
      title: z.string(),
      kind: z.enum(["phrase", "test"]).describe("a phrase is heard by every coil; a test signal drives all alike"),
      description: z.string(),
      seconds: z.number(),
    }),
  ),
  hands: waysOf(HAND_NAMES).describe(`how a phrase is played, default ${DEFAULT_HAND}`),
  strings: waysOf(STRING_AGES).describe(`on strings of what age, default ${DEFAULT_STRING_AGE}`),
  listening: z
    .object({
      chains: waysOf(CHAINS),
      amplifier: z.object({
        response: z.string(),
        driveFrom: z.number(),
        driveTo: z.number(),
        basis: z.string().describe("what the drive does, and what it rests on"),
      }),
      speaker: z.object({
        highPass: z.object({ hertz: z.number(), q: z.number() }).describe("second order"),
        presence: z
          .object({ hertz: z.number(), q: z.number(), decibels: z.number() })
          .describe("a bell, √gain at ±1/2Q"),
        lowPass: z.object({ hertz: z.number(), order: z.number() }).describe("Butterworth"),
        basis: z.string().describe("where the figures come from"),
      }),
    })
    .describe("every figure of what a sound may be heard through"),
});

export type SignalsAnswer = Answered<typeof signalsAnswerSchema>;
