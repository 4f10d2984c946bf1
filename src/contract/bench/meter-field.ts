import * as z from "zod";
import { METER_KIND_NAMES, METER_KINDS, RANGINGS } from "../../bench/meter/own/meter-kinds.ts";
import { type MeterSpec, ownMeterOf } from "../../bench/meter/own/own-meter.ts";
import { parseQuantity } from "../../build-file/quantity.ts";
import { oneOf, strict, writtenQuantity } from "../../build-file/zod-tools.ts";
import { PresolderError } from "../../errors.ts";
import { MAX_METER_COUNTS, MAX_METER_LEADS_OHMS, MAX_METER_RANGES } from "../../limits.ts";

const range = (meaning: string) => writtenQuantity("resistance", { min: 1, max: 1e12 }, meaning);

const kinds = METER_KIND_NAMES.map((name) => `${name}: ${METER_KINDS[name].words}`).join("; ");

const meterSpec = strict({
  kind: oneOf(METER_KIND_NAMES).optional().describe("what is left out is as it is with this kind"),
  ranging: oneOf(RANGINGS).optional().describe("who sets the range; needle: a moving coil over a scale of ohms"),
  counts: z.int().min(100).max(MAX_METER_COUNTS).optional().describe("steps of a full range: 2000 shows 0 to 1999"),
  ranges: z
    .array(range("end of a range; of a needle, the middle of its scale"))
    .min(1)
    .max(MAX_METER_RANGES)
    .optional()
    .describe("the lowest first; left out: one a decade"),
  range: range("the one of them that it stays on").optional(),
  error: strict({
    share: z.number().min(0).max(0.5).describe("of the reading; of a needle, of its arc"),
    digits: z.number().min(0).max(100).optional().describe("of the last place"),
  }).optional(),
  testCurrent: z
    .number()
    .min(1e-9)
    .max(1)
    .optional()
    .describe("amperes through its probes held together, on its lowest range; a tenth on each above"),
  openFrom: range("from here on it shows that it is over its range, on the highest").optional(),
  leads: writtenQuantity(
    "resistance",
    { min: 0, max: MAX_METER_LEADS_OHMS },
    "what it shows with its probes held together",
  ).optional(),
  zeroed: z.boolean().optional().describe("whether it takes its leads off by itself"),
});

function read(told: z.output<typeof meterSpec>): MeterSpec {
  const value = (text: number | string | undefined) =>
    text === undefined ? undefined : parseQuantity(text, "resistance").value;
  const { ranges, range: fixed, openFrom, leads, ...rest } = told;
  return {
    ...rest,
    ranges: ranges?.map((end) => value(end)!),
    range: value(fixed),
    openFrom: value(openFrom),
    leads: value(leads),
  };
}

/** The meter that readings are taken with. One field, wherever readings are given or taken. */
export const meterField = z
  .union([oneOf(METER_KIND_NAMES), meterSpec])
  .describe(
    `the meter in use: by its kind, or by its figures. ${kinds}. Left out: a hobby meter of 1 %, open from 20 MΩ`,
  )
  .transform((told, context) => {
    try {
      return ownMeterOf(typeof told === "string" ? told : read(told));
    } catch (error) {
      if (!(error instanceof PresolderError)) throw error;
      for (const { path, message } of error.faults)
        context.addIssue({ code: "custom", path: path.split(".").slice(1), message });
      return z.NEVER;
    }
  })
  .optional();

export const meterAnswer = z
  .object({
    words: z.string(),
    notes: z
      .array(z.string())
      .describe("its leads, what it shows above its range, and what its current does in a coil"),
  })
  .optional()
  .describe("of the `meter` told");

export const onMeterAnswer = z
  .object({
    range: z.number().describe("ohms: the end of the range to read on; of a needle, the middle of the scale"),
    display: z.string().describe('what stands there for the nominal value, leads included: "7.42", "OL"'),
    unit: z.enum(["", "Ω", "kΩ", "MΩ"]).describe("the display's own"),
    text: z.string().describe("the same in words, with what is to be waited for"),
    wait: z.number().nullable().describe("seconds until it stands still, where that is over half a second"),
  })
  .optional()
  .describe("on the `meter` told; `low` and `high` are then what it may show, its error, last digit and leads granted");
