import * as z from "zod";
import { MAX_NAME_CHARS } from "../limits.ts";
import { DEFAULT_SAMPLE_RATE_HZ } from "../render/signals.ts";
import { addressQuery, codeField, rateInAddress } from "./address-fields.ts";

export const impulseQuerySchema = addressQuery({
  build: codeField,
  rate: rateInAddress.default(DEFAULT_SAMPLE_RATE_HZ),
  coil: z
    .string()
    .max(MAX_NAME_CHARS)
    .optional()
    .describe("pickup.coil: this coil's own transfer, without its size and sign"),
  over: codeField
    .optional()
    .describe(
      "link code of a build to divide by, its settings as over.lever=2: turns a recording through it into one through build",
    ),
});

export type ImpulseQuery = z.output<typeof impulseQuerySchema>;
