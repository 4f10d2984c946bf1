import * as z from "zod";
import { isOpenWord, isOverWord, OVER } from "../../bench/meter/shown.ts";
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

const EXPECTED =
  'expected a number or text such as "5k9" (ohms), "OL" where the meter was over its range, or null where it showed an open circuit';

// One transform over plain types: a union with a transform inside would be documented by its other branches alone.
const asShown = z
  .union([z.number(), z.string(), z.null()], { error: () => EXPECTED })
  .describe(
    "ohms, or text with a unit; null where the meter showed an open circuit. What it shows over its range is taken too: " +
      '"OL", "over", "----", or the lone 1 at the left as "1 ."',
  );

/** What a meter showed: ohms, null for open, "over" for over its range. */
export const shownRead = asShown.transform((shown, context) => {
  if (shown === null) return null;
  if (typeof shown === "string" && isOpenWord(shown)) return null;
  if (typeof shown === "string" && isOverWord(shown)) return OVER;
  const read = ohmsShown.safeParse(shown);
  if (read.success) return read.data;
  for (const { message } of read.error.issues) context.addIssue({ code: "custom", message });
  return z.NEVER;
});

/** The same where what is over the range counts as open. */
export const ohmsRead = shownRead.transform((shown) => (shown === OVER ? null : shown));

export const rangeReadOn = quantity(
  "resistance",
  { above: 0, max: 1e12 },
  "the end of the range that the meter stood on",
);
