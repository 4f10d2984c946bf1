import * as z from "zod";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import { REMEDY_NAMES } from "../listening/noise/remedies.ts";
import { settingFields } from "./answer-fields.ts";
import { buildField, settingsField, sweepField } from "./fields.ts";
import { amplifierField, roomField } from "./noise-field.ts";
import type { Answered, Sent } from "./wire.ts";

export const noiseRequestSchema = strict({
  build: buildField,
  sweep: sweepField.optional().describe("default: every position of the main switch"),
  settings: settingsField.optional(),
  hum: oneOf(["50", "60"]).default("50").describe("mains frequency in Hz"),
  field: roomField.optional(),
  amplifier: amplifierField.optional(),
});

const level = z.object({
  microvolts: z.number().describe("µV RMS, 20 Hz to 20 kHz"),
  decibels: z
    .number()
    .nullable()
    .describe("dB re the playing level of the same setting; null where no string is heard"),
  microvoltsA: z.number().describe("the same A-weighted (IEC 61672-1)"),
  decibelsA: z.number().nullable().describe("re the playing level, A-weighted too"),
});

const remedyAnswer = z.object({
  name: z.enum(REMEDY_NAMES),
  hum: level.describe("all hum with it"),
  change: z.number().nullable().describe("dB; null where nothing hums"),
  changeA: z.number().nullable(),
});

const positionAnswer = z.object({
  ...settingFields,
  sounds: z.string(),
  playing: level.pick({ microvolts: true, microvoltsA: true }),
  hum: z.object({ coils: level, loops: level, runs: level, sum: level }),
  hiss: z.object({ circuit: level, amplifier: level, sum: level }),
  loopArea: z.number().describe("cm² that the wires enclose, as the jack sees it"),
  remedies: z
    .array(remedyAnswer)
    .describe("what would be left of the hum, each on the guard as it is; none of those that change nothing"),
});

export const noiseAnswerSchema = z.object({
  answer: z.string().describe("what hums and hisses most, and what would help most"),
  hum: z.enum(["50", "60"]),
  field: z.object({ microtesla: z.number(), voltsPerMetre: z.number(), harmonics: z.number() }),
  amplifier: z.object({ nanovolts: z.number(), picoamperes: z.number() }),
  reverseWound: z.string().nullable().describe("the pickup that a reverse-wound one would take the place of"),
  positions: z.array(positionAnswer),
  basis: z.record(z.string(), z.string()).describe("what each figure rests on"),
});

export type NoiseRequest = Sent<typeof noiseRequestSchema>;
export type NoiseBody = z.output<typeof noiseRequestSchema>;
export type NoiseAnswer = Answered<typeof noiseAnswerSchema>;
