import * as z from "zod";
import { DEFAULT_ALLOWANCES } from "../../bench/sheet/cut-list.ts";
import { quantity, strict } from "../../build-file/zod-tools.ts";
import { ohmsAnswer } from "./readings.ts";

const allowance = (meaning: string, usual: number) => quantity("length", { min: 0, max: 0.5 }, meaning).default(usual);

export const allowancesField = strict({
  slack: allowance("added to every wire", DEFAULT_ALLOWANCES.slack),
  strip: allowance("bared at each end", DEFAULT_ALLOWANCES.strip),
})
  .default(DEFAULT_ALLOWANCES)
  .describe("what the cut list adds to a wire's run along the guard's edges");

const strings = z.array(z.string());

const connectionAnswer = z.object({
  number: z.int(),
  from: z.string(),
  to: z.string(),
  means: z.string().describe("wire, bent lug, jumper, leg, lead, bus wire, braid or inside"),
  grownFrom: strings.describe("lugs that it grows out of, with nothing to solder there"),
});

const cutAnswer = z.object({
  connection: z.int(),
  from: z.string(),
  to: z.string(),
  kind: z.string(),
  colour: z.string().describe("ground has one of its own"),
  run: z.number().describe("metres along the guard's edges"),
  cut: z.number().describe("metres to cut: run, slack and both strips, rounded up to 5 mm; or the build's own length"),
  strip: z.number().describe("metres bared at each end"),
});

const jointAnswer = z.object({
  number: z.int(),
  kind: z.enum(["case", "lug", "leg", "lead", "splice"]),
  lugs: strings,
  arrivals: z
    .array(z.object({ connection: z.int(), means: z.string(), other: z.string(), colour: z.string().optional() }))
    .describe("what meets here, all of it in place before the one heating"),
  text: z.string(),
});

const checkAnswer = z.object({
  text: z.string(),
  between: z.tuple([z.string(), z.string()]).optional(),
  low: ohmsAnswer.optional(),
  high: ohmsAnswer.optional(),
});

export const sheetAnswer = z
  .object({
    cautions: strings,
    preparations: strings,
    connections: z.array(connectionAnswer),
    cuts: z.array(cutAnswer),
    allowances: z.object({ slack: z.number(), strip: z.number() }).describe("metres"),
    stages: z.array(
      z.object({
        title: z.string(),
        parts: strings,
        joints: z.array(jointAnswer),
        checks: z.array(checkAnswer).describe("before going on to the next stage"),
      }),
    ),
    notes: strings,
  })
  .describe("what to solder in which order");
