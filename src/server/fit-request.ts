import { z } from "zod";
import { oneOf, quantity, strict } from "../build-file/zod-tools.ts";
import { LOSS_MODELS } from "../choice/fit/coil-shapes.ts";
import { readMeasurements } from "../choice/fit/measurement-csv.ts";
import { RANGE_TYPES } from "../choice/fit/resistance-range.ts";
import { MAX_FIT_POINTS } from "../limits.ts";
import { refusal } from "./http/validation.ts";
import type { FitJob } from "./work/choice-jobs.ts";

/** A meter on a coil: its own accuracy, and the copper's 0.4 % a kelvin; common practice, no source. */
const METER_PRECISION = 0.005;
const MAX_READINGS = 100;

const precisionField = z
  .number()
  .gt(0)
  .max(0.5)
  .optional()
  .describe("relative standard deviation of each measured value; left out: found from the residuals");
const ohms = (meaning: string) => quantity("resistance", { above: 0, max: 1e7 }, meaning);
const resistancePrecision = z
  .number()
  .gt(0)
  .max(0.5)
  .default(METER_PRECISION)
  .describe("relative standard deviation of the DC resistance");
const acrossField = strict({
  resistance: quantity("resistance", { above: 0, max: 1e12 }, "resistance").optional(),
  capacitance: quantity("capacitance", { min: 0, max: 1e-6 }, "capacitance").default(0),
});
const lossField = oneOf(LOSS_MODELS).optional().describe("the loss model; left out: the best that the data can tell");
const hertz = quantity("frequency", { above: 0, max: 1e6 }, "frequency");
const numbers = z.array(z.number()).max(MAX_FIT_POINTS);
const MAX_CSV = 500_000;
const csvField = z.string().max(MAX_CSV);

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
    .max(MAX_READINGS),
  peakOf: oneOf(["impedance", "response"])
    .default("impedance")
    .describe("whether the peak was seen in the impedance or in the voltage while something else drives the coil"),
  across: acrossField.optional().describe("what else hangs across the coil: leads, a meter"),
  precision: precisionField,
});

const impedance = strict({
  method: z.literal("impedance"),
  table: z
    .union([csvField, strict({ frequencies: numbers, ohms: numbers, degrees: numbers.optional() })])
    .describe("lines of Hz, ohms and optionally degrees; or lists"),
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

const resistanceOnly = strict({
  method: z.literal("resistance"),
  resistance: ohms("DC resistance"),
  type: oneOf(RANGE_TYPES),
});

export const fitBodySchema = z.discriminatedUnion("method", [resonances, impedance, response, resistanceOnly], {
  error: () => 'expected an object whose "method" is "resonances", "impedance", "response" or "resistance"',
});

export type FitBody = z.output<typeof fitBodySchema>;

interface Columns {
  readonly frequenciesHz: readonly number[];
  readonly values: readonly number[];
  readonly thirds?: readonly number[] | undefined;
}

function checkColumns({ frequenciesHz, values, thirds }: Columns, valuesMustBePositive: boolean): void {
  const faults = [];
  if (values.length !== frequenciesHz.length || (thirds && thirds.length !== frequenciesHz.length))
    faults.push({ path: "table", message: "its lists have different lengths; expected one value a frequency" });
  const bad = frequenciesHz.findIndex((value) => !(value > 0));
  if (bad >= 0)
    faults.push({ path: `table.frequencies.${bad}`, message: `is ${frequenciesHz[bad]}; expected more than 0 Hz` });
  const low = valuesMustBePositive ? values.findIndex((value) => !(value > 0)) : -1;
  if (low >= 0) faults.push({ path: `table.ohms.${low}`, message: `is ${values[low]}; expected more than 0 Ω` });
  if (faults.length > 0) throw refusal("REQUEST_INVALID", faults);
}

function across(given: z.output<typeof acrossField> | undefined) {
  return { resistance: given?.resistance ?? Number.POSITIVE_INFINITY, capacitance: given?.capacitance ?? 0 };
}

function knownResistance(body: { resistance?: number | undefined; resistancePrecision: number }) {
  return body.resistance === undefined ? undefined : { ohms: body.resistance, precision: body.resistancePrecision };
}

/**
 * The fit that a request asks for.
 * @throws PresolderError REQUEST_INVALID naming the line or field at fault
 */
export function fitJobOf(body: Exclude<FitBody, { method: "resistance" }>): FitJob {
  if (body.method === "resonances") {
    const { resistance: value, resistancePrecision: precision, peakOf } = body;
    const setup = {
      resistance: { ohms: value, precision },
      peakOf,
      across: across(body.across),
      precision: body.precision,
    };
    const readings = body.readings.map(({ capacitance, frequency }) => ({
      capacitanceFarads: capacitance,
      frequencyHz: frequency,
    }));
    return { method: "resonances", readings, setup };
  }
  const shared = {
    resistance: knownResistance(body),
    precision: body.precision,
    models: body.loss && [body.loss],
  };
  if (body.method === "impedance") {
    const { table } = body;
    const columns: Columns =
      typeof table === "string"
        ? readMeasurements(table, "table")
        : { frequenciesHz: table.frequencies, values: table.ohms, thirds: table.degrees };
    checkColumns(columns, true);
    const { frequenciesHz, values, thirds } = columns;
    return {
      method: "impedance",
      table: { frequenciesHz, ohms: values, degrees: thirds },
      known: { ...shared, across: across(body.across) },
    };
  }
  const { table } = body;
  const columns: Columns =
    typeof table === "string"
      ? readMeasurements(table, "table")
      : { frequenciesHz: table.frequencies, values: table.levels };
  checkColumns(columns, false);
  const { frequenciesHz, values } = columns;
  return {
    method: "response",
    table: { frequenciesHz, levelsDb: values },
    known: { ...shared, load: across(body.load) },
  };
}
