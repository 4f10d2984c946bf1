import * as z from "zod";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import { peakAnswer, settingFields } from "./answer-fields.ts";
import { buildField, playingFields, settingsField, sweepField, weightingField } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const tableRequestSchema = strict({
  build: buildField,
  sweep: sweepField.optional(),
  settings: settingsField.optional(),
  signal: weightingField,
  ...playingFields,
  format: oneOf(["json", "csv"]).default("json"),
});

const tableRowSchema = z.object({
  ...settingFields,
  peak: peakAnswer,
  cutoff: z.number().nullable().describe("Hz"),
  level: z.number().describe("dB at 200 Hz re the EMF of a coil with output 1"),
  loudness: z.number().nullable().describe("LU below the loudest setting of the table; null where silent"),
  hum: z.number().nullable().describe("dB re the hum of one reference single coil; null where none is left"),
});

const tableAnswerSchema = z.object({
  weighting: z.string().describe("the signal that loudness is of, or flat"),
  rows: z.array(tableRowSchema),
});

export const tableAnswers = {
  description: "The table as JSON, or as CSV where `format` says so",
  content: {
    "application/json": { schema: tableAnswerSchema },
    "text/csv": { schema: z.string() },
  },
};

export type TableRequest = Sent<typeof tableRequestSchema>;
export type TableBody = z.output<typeof tableRequestSchema>;
export type TableAnswer = Answered<typeof tableAnswerSchema>;
export type TableRowAnswer = TableAnswer["rows"][number];
