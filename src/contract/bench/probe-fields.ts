import * as z from "zod";
import { quantity, strict } from "../../build-file/zod-tools.ts";
import { MAX_LUG_NAME_CHARS, MAX_NAME_CHARS, MAX_PROBES } from "../../limits.ts";
import { settingsField } from "../fields.ts";

const lugName = z.string().min(1).max(MAX_LUG_NAME_CHARS);

export const celsiusField = z.number().min(-40).max(100);

export const temperatureField = celsiusField
  .default(20)
  .describe("°C, of the coils; copper gains 0.393 % a kelvin (IEC 60028), and a coil's resistance is given at 20 °C");

export const betweenField = z.tuple([lugName, lugName]).describe("the two lugs that the probes touch");

export const sweptPotField = z
  .string()
  .min(1)
  .max(MAX_NAME_CHARS)
  .describe("a pot to turn through its whole travel while noting the highest reading");

export const probesField = z
  .array(strict({ between: betweenField, settings: settingsField.optional(), sweep: sweptPotField.optional() }))
  .max(MAX_PROBES)
  .default([])
  .describe("readings across any two lugs, answered under `probes`");

const ohmsShown = quantity("resistance", { min: 0, max: 1e12 }, "what the meter showed");

// One transform over plain types: a union with a transform inside would be documented by its other branches alone.
export const ohmsRead = z
  .union([z.number(), z.string(), z.null()], {
    error: () => 'expected a number or text such as "5k9" (ohms), or null where the meter showed an open circuit',
  })
  .describe("ohms, or text with a unit; null where the meter showed an open circuit")
  .transform((shown, context) => {
    if (shown === null) return null;
    const read = ohmsShown.safeParse(shown);
    if (read.success) return read.data;
    for (const { message } of read.error.issues) context.addIssue({ code: "custom", message });
    return z.NEVER;
  });
