import * as z from "zod";
import { coilSchema } from "../../build-file/part-schemas.ts";
import { oneOf, quantity, strict } from "../../build-file/zod-tools.ts";
import { METAL_LAWS } from "../../measure/emf/metal-law.ts";
import { acrossField, fittedAnswer, loadField, lossField, ohms, resistancePrecision } from "../fit.ts";
import { kindField } from "./signal.ts";

const { resistance, inductance, capacitance, loss } = coilSchema.shape;

const coilValues = strict({ resistance, inductance, capacitance, loss });

/** What a fit by two loads leaves of a pickup's inductance where the load is of 1 or 2 %; a judgement, no source. */
const COIL_PRECISION = 0.02;

const precision = z
  .number()
  .gt(0)
  .max(0.2)
  .default(COIL_PRECISION)
  .describe("relative standard deviation of the coil's values; of its loss, five times as much");

const referenceCoil = strict({
  kind: z.literal("coil"),
  coil: coilValues.describe("an air coil, or one on alnico rods alone: nothing about it takes of its EMF"),
  precision,
});

const integrator = strict({
  kind: z.literal("integrator"),
  corner: quantity(
    "frequency",
    { min: 0.1, max: 1e6 },
    "of the integrator: a first-order low-pass that all is recorded through",
  ),
  exciterCorner: quantity(
    "frequency",
    { min: 100, max: 1e7 },
    "R/(2πL) of the exciter's circuit, above which its current falls",
  )
    .optional()
    .describe("left out: its current is the same at all frequencies"),
});

export const exciterRequest = strict({
  method: z.literal("exciter"),
  signal: kindField,
  coil: coilValues.optional().describe("the pickup's own values; left out: found from `unloaded` and `loaded`"),
  coilPrecision: precision,
  load: loadField.optional().describe("what hung across the pickup in `loaded`, beside the instrument"),
  second: loadField.optional().describe("what hung across it in `second`"),
  across: acrossField
    .optional()
    .describe(
      "what hangs across pickup and reference coil all the while: the input with its lead, or the integrator's own input",
    ),
  reference: z
    .discriminatedUnion("kind", [referenceCoil, integrator], {
      error: () => 'expected an object whose "kind" is "coil" or "integrator"',
    })
    .describe("by what the exciter's own slope is taken out"),
  resistance: ohms("DC resistance, as a meter read it").optional(),
  resistancePrecision,
  loss: lossField,
});

const valueAnswer = z.object({
  name: z.string().describe("as it stands in `shielding`"),
  value: z.number().describe("Hz, or dB of a depth"),
  standardError: z.number(),
  low: z.number().describe("95 % confidence, from here"),
  high: z.number(),
});

/** What the method answers beside its recordings. */
export const exciterFields = {
  slope: z
    .object({
      frequencies: z.array(z.number()).describe("Hz"),
      decibels: z.array(z.number()),
      errors: z.array(z.number()).describe("standard error, dB: noise, and what the coils' values leave open"),
    })
    .describe("the pickup's EMF over that of a coil without metal, 0 dB about 200 Hz"),
  law: oneOf(METAL_LAWS),
  shielding: z
    .array(z.union([z.object({ pole: z.number() }), z.object({ shelf: z.number(), depth: z.number() })]))
    .describe("as a build file's coil takes it; empty: no metal is heard"),
  values: z.array(valueAnswer),
  left: z.number().describe("dB that the law leaves of the slope, root mean square"),
  systematic: z
    .array(z.object({ frequency: z.number(), decibels: z.number() }))
    .describe(
      "how far the slope may be off from each frequency up besides, as the exciter's inductance rises over steel",
    ),
  considered: z.array(
    z.object({
      law: oneOf(METAL_LAWS),
      aicc: z.number().describe("Akaike's information criterion; the least is best"),
      usable: z.boolean().describe("whether the data tell its values"),
    }),
  ),
  fit: fittedAnswer.optional().describe("of the pickup's own coil, where it was found here"),
  notes: z.array(z.string()),
};
