import * as z from "zod";
import { JOINT_AGES } from "../bench/faults/priors/fault-shares.ts";
import { OVER } from "../bench/meter/shown.ts";
import { SYMPTOM_CODES, SYMPTOMS } from "../bench/symptoms/symptom-codes.ts";
import { oneOf, quantity, strict } from "../build-file/zod-tools.ts";
import { MAX_LABEL_CHARS, MAX_NAME_CHARS, MAX_PROBES, MAX_SYMPTOMS } from "../limits.ts";
import { settingsAnswer } from "./answer-fields.ts";
import { meterField } from "./bench/meter-field.ts";
import { ohmsAnswer } from "./bench/meter-reading.ts";
import {
  betweenField,
  ohmsRead,
  rangeReadOn,
  shownRead,
  sweptPotField,
  temperatureField,
} from "./bench/probe-fields.ts";
import { buildField, settingsField } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

export const measuredField = strict({
  between: betweenField,
  settings: settingsField.optional(),
  sweep: sweptPotField.optional(),
  label: z
    .string()
    .max(MAX_LABEL_CHARS)
    .optional()
    .describe("what the person calls it; the answer's texts call it so too"),
  ohms: shownRead
    .optional()
    .describe(
      'ohms, or text with a unit; null where the meter showed an open circuit on its highest range; "OL" or what else it ' +
        "shows over its range, which then lies above `range`, or where that is left out above the meter's own",
    ),
  range: rangeReadOn.optional(),
  above: quantity("resistance", { above: 0, max: 1e12 }, "the end of the range")
    .optional()
    .describe(
      "instead of ohms, where a meter on a range of its own showed OL: the end of that range (ohms, or text with a unit). " +
        "The reading then lies somewhere above it and need not be open",
    ),
  low: ohmsRead
    .optional()
    .describe(
      "ohms, lowest that the display wandered to. Without low and high, or where ohms is not between them (a reading of " +
        "/api/bench sent back with other ohms: its range is what tolerances allow), the meter's error is taken as 1 %, " +
        "which `notes` then says",
    ),
  high: ohmsRead.optional().describe("ohms, highest that the display wandered to; null where open"),
})
  .superRefine(({ ohms, above }, context) => {
    if ((ohms === undefined) !== (above === undefined)) return;
    const found = above === undefined ? "neither ohms nor above is given" : "both ohms and above are given";
    context.addIssue({ code: "custom", path: ["ohms"], message: `${found}; expected one of them` });
  })
  .transform(({ ohms, ...reading }) =>
    ohms === OVER ? { ...reading, ohms: null, isOver: true } : { ...reading, ohms },
  );

const symptomMeanings = Object.entries(SYMPTOMS)
  .map(([code, meaning]) => `${code}: ${meaning}`)
  .join("; ");

const symptomField = strict({
  code: oneOf(SYMPTOM_CODES).describe(symptomMeanings),
  settings: settingsField.optional().describe("where it was noticed; without it in any position, dials at 10"),
  control: z
    .string()
    .min(1)
    .max(MAX_NAME_CHARS)
    .optional()
    .describe("the pot or role that a tone or volume symptom is about"),
});

export const diagnoseRequestSchema = strict({
  build: buildField,
  readings: z
    .array(measuredField)
    .max(MAX_PROBES)
    .default([])
    .describe("what a meter showed, nothing plugged in; any of the readings of /api/bench, or across any two lugs"),
  symptoms: z
    .array(symptomField)
    .max(MAX_SYMPTOMS)
    .default([])
    .describe("what was heard or felt; weighed together with the readings"),
  joints: z
    .enum(JOINT_AGES)
    .optional()
    .describe(
      'how old the joints are: "new" (just soldered, never proven: joints before parts) or "old" (it worked before: what ' +
        "wears and what breaks before what is soldered); without it, something between",
    ),
  temperature: temperatureField,
  meter: meterField,
});

export const faultAnswer = z.object({
  kind: z
    .string()
    .describe(
      'what is wrong, by stable name; "none" where nothing is, "unexplained" where nothing accounts for all readings, ' +
        '"nothing-measured" where there is nothing to go by',
    ),
  lugs: z.array(z.string()),
  ohms: z.number().optional().describe("the value that the readings say the part has, where that is what is wrong"),
});
const faultSets = z.array(z.array(faultAnswer));
export const alternativeAnswer = {
  faults: z.array(faultAnswer),
  message: z.string(),
  prior: z.number().describe("0 to 1, before anything was measured or told; `priors` says where it comes from"),
};
const instruction = z.string().describe("the same as a sentence, lugs by their codes");

export const diagnoseAnswerSchema = z.object({
  considered: z
    .object({ singles: z.int(), ofSingles: z.int(), pairs: z.int() })
    .describe("how many faults were weighed; all single ones of a usual guard, the commonest of a huge one"),
  summary: z
    .string()
    .describe("what it most likely is and why, then what to do next, as a colleague would say it; lugs by their codes"),
  explanations: z
    .array(
      z.object({
        ...alternativeAnswer,
        fit: z
          .number()
          .describe(
            "how well it explains what was told, 0 to 1: the probability that a guard that is so shows readings at least " +
              "this far from its own (chi-square), times that of its symptoms being told; 0 where a reading lies far outside",
          ),
        probability: z
          .number()
          .describe(
            "0 to 1, of this explanation and those in `sameAs` together; with the others' and the remainder's it makes 1. 0 where " +
              "a reading stays unexplained",
          ),
        predicted: z
          .array(ohmsAnswer)
          .describe("what the meter would show for each reading given, other parts at nominal; ohms, null where open"),
        sameAs: z
          .array(z.object(alternativeAnswer))
          .describe(
            "what nothing told can tell from it, parts in tolerance and the meter's error granted; the commonest first",
          ),
        alike: z.string().describe("how many `sameAs` holds, and of which kinds"),
      }),
    )
    .describe("those that account for every reading first, the likelier before the others"),
  remainder: z
    .object({ probability: z.number(), message: z.string() })
    .describe(
      "how likely it is none of these alone: a second fault that nothing told can show, or one that was not weighed",
    ),
  priors: z.string().describe("where the prior probabilities come from"),
  notes: z.array(z.string()).describe("what was taken otherwise than it was written"),
  nextMeasurement: z
    .discriminatedUnion("kind", [
      z.object({
        kind: z.literal("meter"),
        label: z.string(),
        instruction,
        between: z.tuple([z.string(), z.string()]),
        settings: settingsAnswer,
        sweep: z.string().optional(),
        outcomes: z
          .array(z.object({ low: ohmsAnswer, high: ohmsAnswer, share: z.number(), faults: faultSets }))
          .describe(
            "what the meter may show (ohms, null where open), how much of the belief expects it (0 to 1), and the faults that " +
              "would then remain, the likeliest first",
          ),
      }),
      z.object({
        kind: z.literal("listen"),
        label: z.string(),
        instruction,
        symptom: z.object({ code: z.enum(SYMPTOM_CODES), settings: settingsAnswer, control: z.string().optional() }),
        outcomes: z.array(z.object({ heard: z.boolean(), faults: faultSets })),
      }),
      z.object({
        kind: z.literal("try"),
        label: z.string(),
        instruction,
        cautions: z.array(z.string()),
        outcomes: z.array(z.object({ helped: z.boolean(), faults: faultSets })),
      }),
    ])
    .nullable()
    .describe(
      "the one further thing to do: by hand where most of the belief is on what no meter shows, else with a meter, or else by ear",
    ),
});

export type DiagnoseRequest = Sent<typeof diagnoseRequestSchema>;
export type MeasuredRequest = NonNullable<DiagnoseRequest["readings"]>[number];
export type SymptomRequest = NonNullable<DiagnoseRequest["symptoms"]>[number];
export type DiagnoseBody = z.output<typeof diagnoseRequestSchema>;
export type DiagnoseAnswer = Answered<typeof diagnoseAnswerSchema>;
export type ExplanationAnswer = DiagnoseAnswer["explanations"][number];
export type NextCheckAnswer = NonNullable<DiagnoseAnswer["nextMeasurement"]>;
