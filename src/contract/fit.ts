import * as z from "zod";
import { oneOf, quantity, strict } from "../build-file/zod-tools.ts";
import { LOSS_MODELS } from "../choice/fit/coil-shapes.ts";
import { RANGE_TYPES } from "../choice/fit/resistance-range.ts";
import { COIL_TYPES } from "../choice/fit/usual-coils.ts";
import { MAX_FIT_POINTS, MAX_FIT_READINGS, MAX_FIT_TABLE_CHARS } from "../limits.ts";
import type { Answered, Sent } from "./wire.ts";

/** A meter on a coil: its own accuracy, and the copper's 0.4 % a kelvin; common practice, no source. */
const METER_PRECISION = 0.005;

const precisionField = z
  .number()
  .gt(0)
  .max(0.5)
  .optional()
  .describe("relative standard deviation of each measured value; left out: found from the residuals");
export const ohms = (meaning: string) => quantity("resistance", { above: 0, max: 1e7 }, meaning);
export const resistancePrecision = z
  .number()
  .gt(0)
  .max(0.5)
  .default(METER_PRECISION)
  .describe("relative standard deviation of the DC resistance");
const acrossOhms = quantity("resistance", { above: 0, max: 1e12 }, "resistance").optional();
const acrossFarads = quantity("capacitance", { min: 0, max: 1e-6 }, "capacitance");
export const acrossField = strict({ resistance: acrossOhms, capacitance: acrossFarads.default(0) });
/** What is put across a coil to be told by. */
export const loadField = strict({
  resistance: acrossOhms,
  capacitance: acrossFarads.default(0),
  tolerance: z
    .number()
    .min(0)
    .max(0.2)
    .optional()
    .describe("of its resistance and of its capacitance, a fraction: fitted along within it; left out: both as told"),
});
/** An interface's input: what is left out is none of 0, but not known. */
export const inputField = strict({ resistance: acrossOhms, capacitance: acrossFarads.optional() });
export const lossField = oneOf(LOSS_MODELS)
  .optional()
  .describe("the loss model; left out: the best that the data can tell");
export const coilTypeField = oneOf(COIL_TYPES)
  .optional()
  .describe(
    "what stands in the coil, by which its loss is guided where measurements leave it open: rods (alnico, no steel), steel-single (steel" +
      " cores or a base plate), wide-single (screws over bar magnets), humbucker (screws and slugs, also under a cover that takes hardly any treble), covered (a lossy cover or a closed can)",
  );
const hertz = quantity("frequency", { above: 0, max: 1e6 }, "frequency");
const numbers = z.array(z.number()).max(MAX_FIT_POINTS);
const csvField = z.string().max(MAX_FIT_TABLE_CHARS);

const resonances = strict({
  method: z.literal("resonances"),
  resistance: ohms("DC resistance"),
  resistancePrecision,
  readings: z
    .array(
      strict({
        capacitance: quantity("capacitance", { min: 0, max: 1e-5 }, "across the coil; 0 for none"),
        frequency: hertz,
      }),
    )
    .min(1)
    .max(MAX_FIT_READINGS),
  peakOf: oneOf(["impedance", "response"])
    .default("impedance")
    .describe("whether the peak was seen in the impedance or in the voltage while something else drives the coil"),
  across: acrossField.optional().describe("what else hangs across the coil: leads, a meter"),
  type: coilTypeField,
  precision: precisionField,
});

const impedance = strict({
  method: z.literal("impedance"),
  table: z
    .union([
      csvField,
      strict({
        frequencies: numbers,
        ohms: numbers,
        degrees: numbers.optional(),
        errors: z
          .array(z.number().gt(0))
          .max(MAX_FIT_POINTS)
          .optional()
          .describe("how far off each may be, as a fraction; left out: found from the residuals"),
      }),
    ])
    .describe("lines of Hz, ohms and optionally degrees; or lists"),
  load: loadField
    .optional()
    .describe(
      "where the table was computed from voltages without and with this load: those are fitted then, as by two-loads, since an" +
        " impedance is hardly told where they are nearly alike; needs degrees and the DC resistance",
    ),
  resistance: ohms("DC resistance").optional(),
  resistancePrecision,
  across: acrossField.optional().describe("what hangs across the coil during the measurement"),
  loss: lossField,
  precision: precisionField,
});

const response = strict({
  method: z.literal("response"),
  table: z
    .union([csvField, strict({ frequencies: numbers, levels: numbers })])
    .describe("lines of Hz and dB, the exciter's own slope taken out; or lists"),
  load: acrossField.describe("what the coil is measured into"),
  resistance: ohms("DC resistance").optional(),
  resistancePrecision,
  loss: lossField,
  precision: precisionField,
});

const ratioTable = z
  .union([csvField, strict({ frequencies: numbers, decibels: numbers, degrees: numbers })])
  .describe("lines of Hz, dB and degrees, the voltage unloaded over the voltage under the load; or lists");
const ratioLoad = loadField.describe("what was put across the coil for the second of the two");

const twoLoads = strict({
  method: z.literal("two-loads"),
  table: ratioTable,
  load: ratioLoad,
  second: strict({ table: ratioTable, load: ratioLoad })
    .optional()
    .describe("the same under another load, fitted along"),
  resistance: ohms("DC resistance; needed where there is no second load").optional(),
  resistancePrecision,
  across: acrossField.optional().describe("what hangs across the coil all the while: the instrument"),
  loss: lossField,
  precision: precisionField,
});

const resistanceOnly = strict({
  method: z.literal("resistance"),
  resistance: ohms("DC resistance"),
  type: oneOf(RANGE_TYPES),
});

export const fitRequestSchema = z.discriminatedUnion(
  "method",
  [resonances, impedance, response, twoLoads, resistanceOnly],
  {
    error: () =>
      'expected an object whose "method" is "resonances", "impedance", "response", "two-loads" or "resistance"',
  },
);

const valueAnswer = z.object({
  name: z.string().describe("as in the build file's coil"),
  value: z.number().describe("SI units"),
  relativeError: z.number().describe("standard error as a fraction"),
  standardError: z.number(),
  low: z.number().describe("95 % confidence, from here"),
  high: z.number(),
});

const residualAnswer = z.object({
  of: z.enum(["magnitude", "phase", "frequency"]),
  frequency: z.number().describe("Hz"),
  error: z.number().describe("measured minus fitted: a fraction for magnitude and frequency, radians for phase"),
});

export const fittedAnswer = z.object({
  method: z.enum(["resonances", "impedance", "response", "two-loads"]),
  coil: z
    .object({
      resistance: z.number(),
      inductance: z.number(),
      capacitance: z.number(),
      loss: z
        .union([z.number(), z.array(z.object({ resistance: z.number(), inductance: z.number().optional() }))])
        .optional(),
    })
    .describe("to be dropped into the build file's coil"),
  lossModel: z.enum(LOSS_MODELS),
  values: z.array(valueAnswer),
  lowFrequencyInductance: valueAnswer,
  precision: z.object({
    value: z.number().describe("relative standard deviation of the measurements"),
    estimated: z.boolean().describe("found from the residuals"),
  }),
  degreesOfFreedom: z.int(),
  condition: z.number().describe("of the scaled Jacobian"),
  considered: z
    .array(
      z.object({ loss: z.enum(LOSS_MODELS), aicc: z.number().nullable(), usable: z.boolean(), reason: z.string() }),
    )
    .describe("the loss models tried; the least AICc among the usable ones is taken"),
  residuals: z.array(residualAnswer),
  notes: z.array(z.string()),
});

const range = z.object({ low: z.number(), high: z.number() });
const rangeAnswer = z.object({
  method: z.literal("resistance"),
  ranges: z.object({ resistance: z.number(), inductance: range, capacitance: range, loss: range }),
  basis: z.string(),
});

export const fitAnswerSchema = z.union([fittedAnswer, rangeAnswer]);

export type FitRequest = Sent<typeof fitRequestSchema>;
export type FitBody = z.output<typeof fitRequestSchema>;
export type AcrossBody = z.output<typeof acrossField>;
export type LoadBody = z.output<typeof loadField>;
export type FitAnswer = Answered<typeof fitAnswerSchema>;
export type FittedAnswer = Answered<typeof fittedAnswer>;
export type RangeAnswer = Answered<typeof rangeAnswer>;
