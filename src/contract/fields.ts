import * as z from "zod";
import { planFormSchema } from "../build-file/expand.ts";
import { longFormSchema } from "../build-file/schema.ts";
import { oneOf, quantity, strict } from "../build-file/zod-tools.ts";
import { MAX_FREQUENCIES, MAX_FREQUENCY_HZ, MAX_NAME_CHARS, MAX_SETTINGS, MAX_VALUE_CHARS } from "../limits.ts";
import { DEFAULT_HAND, DEFAULT_STRING_AGE, HAND_NAMES, STRING_AGES } from "../render/playing.ts";
import { SIGNAL_NAMES } from "../render/signals.ts";

function documented(schema: z.ZodType): object {
  const { $schema: _, ...json } = z.toJSONSchema(schema, { io: "input", unrepresentable: "any" });
  return json;
}

export const longFormJson = documented(longFormSchema);
export const planJson = documented(planFormSchema.shape.plan);

/** Read by `readBuild`, which knows both forms and names every field at fault; here only documented. */
export const buildField = z
  .unknown()
  .refine((value) => value !== undefined, "is missing; expected the build file")
  .meta({
    id: "Build",
    anyOf: [
      { title: "long form", ...longFormJson },
      { title: "plan", ...documented(planFormSchema) },
    ],
    description: "The build file, in its long form; or a `plan` instead of `parts` and `wires`",
  });

const settingValue = z.union([z.number(), z.string().max(MAX_VALUE_CHARS)], {
  error: () => 'expected a dial 0 to 10, a position from 1, or "down", "centre", "up"',
});
const controlName = z.string().min(1).max(MAX_NAME_CHARS);

export const settingsField = z
  .record(controlName, settingValue)
  .describe(
    "a control or role: a dial 0 to 10, a position from 1, or down, centre, up; controls left out stay at rest",
  );

export const sweepField = z
  .record(controlName, z.array(settingValue).min(1).max(MAX_SETTINGS))
  .describe("axes to vary, by control or role, and their values");

const frequency = quantity("frequency", { above: 0, max: MAX_FREQUENCY_HZ }, "a frequency");

export const frequenciesField = z
  .union(
    [
      z.array(frequency).min(1).max(MAX_FREQUENCIES, `expected at most ${MAX_FREQUENCIES} frequencies`),
      strict({
        from: frequency.default(20),
        to: frequency.default(20_000),
        count: z.int().min(1).max(MAX_FREQUENCIES).default(512),
      }).refine(({ from, to }) => from <= to, { path: ["to"], message: "expected a frequency not below `from`" }),
    ],
    { error: () => 'expected {"from", "to", "count"} or a list of frequencies in Hz' },
  )
  .describe("log spaced, default 20, 20000, 512; or a list of Hz");

export const weightingField = oneOf(SIGNAL_NAMES)
  .optional()
  .describe("a built-in signal whose spectrum weighs the bands; left out: every ERB band the same");

/** How a phrase is played; refused beside anything else. */
export const playingFields = {
  hand: oneOf(HAND_NAMES).optional().describe(`how a phrase is plucked, default ${DEFAULT_HAND}`),
  strings: oneOf(STRING_AGES)
    .optional()
    .describe(`the strings that a phrase is played on, default ${DEFAULT_STRING_AGE}`),
};
