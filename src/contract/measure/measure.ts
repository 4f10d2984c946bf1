import * as z from "zod";
import { oneOf, quantity, strict } from "../../build-file/zod-tools.ts";
import { acrossField, fittedAnswer, loadField, lossField, ohms, resistancePrecision } from "../fit.ts";
import type { Answered, Sent } from "../wire.ts";
import { exciterFields, exciterRequest } from "./exciter.ts";
import { kindField } from "./signal.ts";

/** The WAV files that a measurement may bring, each in a field of this name. */
export const RECORDINGS = [
  "unloaded",
  "loaded",
  "second",
  "measured",
  "gain",
  "open",
  "short",
  "referenceCoil",
] as const;
export type RecordingName = (typeof RECORDINGS)[number];

const dcResistance = ohms("DC resistance, as a meter read it");

const twoLoads = strict({
  method: z.literal("two-loads"),
  signal: kindField,
  load: loadField.describe("what hung across the pickup in `loaded`, beside the instrument"),
  second: loadField.optional().describe("what hung across it in `second`"),
  across: acrossField.optional().describe("the instrument's own input, in all recordings"),
  reference: oneOf(["first", "second"])
    .optional()
    .describe("the channel of stereo files that has the signal itself; left out: the files have the pickup alone"),
  resistance: dcResistance.optional(),
  resistancePrecision,
  loss: lossField,
});

const seriesResistor = strict({
  method: z.literal("series-resistor"),
  signal: kindField,
  part: oneOf(["coil", "capacitor", "resistor", "lead"]).describe("what is measured"),
  resistor: quantity("resistance", { min: 10, max: 1e7 }, "between the two channels' points"),
  resistorTolerance: z.number().min(0).max(0.2).default(0.01).describe("fraction; every value carries it"),
  channels: oneOf(["before-behind", "behind-before"])
    .default("before-behind")
    .describe("which side of the resistor the first and the second channel hang on"),
  input: acrossField
    .optional()
    .describe("the second channel's own input with its lead, where no recording `open` tells it"),
  resistance: dcResistance.optional(),
  resistancePrecision,
  loss: lossField,
});

export const measureRequestSchema = z.discriminatedUnion("method", [twoLoads, seriesResistor, exciterRequest], {
  error: () => 'expected an object whose "method" is "two-loads", "series-resistor" or "exciter"',
});

export const recordingFields = {
  drift: z.number().describe("millionths by which the recorder's clock ran faster than the player's"),
  noise: z.number().describe("RMS of what is heard while nothing plays, dB re full scale"),
  leftOut: z
    .array(
      z.object({
        pass: z.int().describe("1 to 3, the loudest first"),
        why: z.enum(["lost", "stuck", "clipped"]).describe("samples lost, a dropout filled in, or clipped"),
      }),
    )
    .describe("passes that were not used"),
};

const recordingAnswer = z.object({ file: z.enum(RECORDINGS), ...recordingFields });

const columns = {
  frequencies: z.array(z.number()).describe("Hz"),
  degrees: z.array(z.number()),
  errors: z.array(z.number()).describe("standard error, a fraction"),
};

const valueAnswer = z.object({ value: z.number().describe("SI units"), standardError: z.number() });

export const measureAnswerSchema = z.discriminatedUnion("method", [
  z.object({
    method: z.literal("two-loads"),
    recordings: z.array(recordingAnswer),
    ratios: z
      .array(z.object({ ...columns, decibels: z.array(z.number()) }))
      .describe("unloaded over loaded, for each load; as /api/fit takes it"),
    fit: fittedAnswer,
  }),
  z.object({
    method: z.literal("series-resistor"),
    recordings: z.array(recordingAnswer),
    impedance: z.object({ ...columns, ohms: z.array(z.number()) }),
    fit: fittedAnswer.optional().describe("of a coil"),
    capacitance: valueAnswer.optional().describe("of a capacitor or a lead, about 1 kHz"),
    lossFactor: valueAnswer.optional().describe("tan δ of a capacitor or a lead, about 1 kHz"),
    resistance: valueAnswer.optional().describe("of a resistor or a pot's track, under 200 Hz"),
    input: z
      .object({ resistance: z.number().optional(), capacitance: z.number().optional() })
      .optional()
      .describe("what `open` shows of the second channel's own input with its lead, SI units"),
    scaleError: z
      .number()
      .describe(
        "fraction by which every value may be off with the resistor, and with the channels' gains where no `gain` tells them; not in the errors above",
      ),
    notes: z.array(z.string()).describe("what else is in the values, and what would tell it"),
  }),
  z.object({ method: z.literal("exciter"), recordings: z.array(recordingAnswer), ...exciterFields }),
]);

export type MeasureRequest = Sent<typeof measureRequestSchema>;
export type MeasureBody = z.output<typeof measureRequestSchema>;
export type MeasureAnswer = Answered<typeof measureAnswerSchema>;
