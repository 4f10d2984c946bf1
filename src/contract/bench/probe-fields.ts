import * as z from "zod";
import { strict } from "../../build-file/zod-tools.ts";
import { MAX_LUG_NAME_CHARS, MAX_NAME_CHARS, MAX_PROBES } from "../../limits.ts";
import { settingsField } from "../fields.ts";

const lugName = z.string().min(1).max(MAX_LUG_NAME_CHARS);

export const temperatureField = z
  .number()
  .min(-40)
  .max(100)
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
