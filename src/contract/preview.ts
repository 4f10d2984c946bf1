import * as z from "zod";
import { oneOf, strict } from "../build-file/zod-tools.ts";
import { MAX_DRIVE } from "../listening/drive/law.ts";
import { DEFAULT_SAMPLE_RATE_HZ, DEFAULT_SIGNAL, SIGNAL_NAMES } from "../render/signals.ts";
import { addressQuery, codeField, rateInAddress } from "./address-fields.ts";
import { settingsField } from "./fields.ts";
import { HUMS } from "./noise-field.ts";
import { chainField, recordedWithField, soundFields } from "./sound-fields.ts";
import type { Sent } from "./wire.ts";

export const previewRequestSchema = strict({
  ...soundFields,
  settings: settingsField.default({}),
  recordedWith: recordedWithField.optional(),
});

export const previewQuerySchema = addressQuery({
  build: codeField,
  signal: oneOf(SIGNAL_NAMES).default(DEFAULT_SIGNAL),
  hand: soundFields.hand,
  strings: soundFields.strings,
  rate: rateInAddress.default(DEFAULT_SAMPLE_RATE_HZ),
  level: soundFields.level,
  encoding: soundFields.encoding,
  hum: z.enum(["50", "60"], "expected 50 or 60").optional().describe("mains hum in the coils alone"),
  noise: oneOf(HUMS).optional().describe("hum of the mains in Hz by coils, loops and open wires, or none"),
  hiss: oneOf(["on", "off"]).optional().describe("of the circuit and the amplifier's input"),
  "listening.chain": chainField,
  "listening.drive": z
    .string()
    .regex(/^\d{1,2}(\.\d{1,6})?$/, `expected a number from 0 to ${MAX_DRIVE}`)
    .transform(Number)
    .pipe(z.number().max(MAX_DRIVE))
    .default(0)
    .describe("how hard the amplifier is driven; 0 is linear"),
});

export type PreviewRequest = Sent<typeof previewRequestSchema>;
export type PreviewBody = z.output<typeof previewRequestSchema>;
export type PreviewQuery = z.output<typeof previewQuerySchema>;
