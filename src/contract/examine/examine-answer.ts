import * as z from "zod";
import { namedSettings } from "../answer-fields.ts";
import { alternativeAnswer, diagnoseAnswerSchema } from "../diagnose.ts";
import { recordingFields } from "../measure/measure.ts";
import type { Answered } from "../wire.ts";
import { takeAnswer, through } from "./take-answer.ts";

const plannedTake = z.object({
  settings: namedSettings,
  through,
  title: z.string().describe('what a list calls it: "lever 2, volume 5"'),
  instruction: z.string().describe("what to do, as a sentence"),
  why: z.string().describe("what it tells"),
});

const planAnswer = z.object({
  kind: z.literal("plan"),
  takes: z.array(plannedTake).describe("in the order to make them, the most telling first; fewer tell less"),
  needs: z.array(z.string()).describe("what to have at hand"),
  notes: z.array(z.string()).describe("what to bear in mind of the plan"),
  cautions: z.array(z.string()),
});

const sortAnswer = z.object({
  title: z.string().describe('"Open connections"'),
  count: z.int(),
  examples: z.array(z.string()).describe("a few of their messages, the likeliest first"),
  shownBy: z.string().nullable().describe("what would show most of them, as a sentence; null where nothing here would"),
});

const readingAnswer = z.object({
  title: z.string(),
  between: z.tuple([z.string(), z.string()]),
  settings: namedSettings,
  shown: z.number().nullable().describe("ohms; null where open"),
  foretold: z
    .number()
    .nullable()
    .describe(
      "what the best answer would make the meter read, its parts where the takes have them, ohms; null where open",
    ),
  agrees: z.boolean(),
  against: z.array(z.string()).describe("titles of the takes that it contradicts"),
  message: z.string(),
});

const departureAnswer = z.object({
  ...alternativeAnswer,
  title: z.string().describe("in a few words"),
  next: z.string().describe("what to do about it"),
  probability: z.number().describe("0 to 1, of this and `sameAs` together"),
  fit: z
    .number()
    .describe("how well it accounts for the takes, 0 to 1: a guard that is so lies this far off or farther"),
  sameAs: z
    .array(z.object(alternativeAnswer))
    .describe("what none of these takes can tell from it: the likeliest forty, beside the drawing eight"),
  alike: z.string().describe("how many there are of those in all, and of which kinds"),
  sorts: z.array(sortAnswer).describe("all of those by sort"),
});

const partAnswer = z.object({
  part: z.string(),
  field: z.string().describe("as in the build file"),
  title: z.string(),
  drawn: z.number().describe("SI units"),
  value: z.number().describe("fitted, SI units"),
  standardError: z.number().describe("of the value, SI units"),
  tolerance: z.number().describe("fraction"),
  told: z.enum(["takes", "tolerance"]).describe("whether these takes tell it, or no more is known than its tolerance"),
  message: z.string(),
});

const togetherAnswer = z.object({
  parts: z.array(z.object({ part: z.string(), field: z.string() })),
  message: z.string().describe("what is told of them only together"),
});

const examinedAnswer = z.object({
  kind: z.literal("examined"),
  verdict: z
    .enum(["as-drawn", "departs", "unclear", "unexplained"])
    .describe(
      "as drawn as far as these takes tell; something departs from the drawing; two or more answers are about as likely; " +
        "nothing that was weighed accounts for the takes",
    ),
  title: z.string(),
  summary: z.string().describe("what it is and why, as a colleague would say it"),
  next: z.string().describe("what to do next"),
  departures: z
    .array(departureAnswer)
    .describe('the likelier before the others, the guard as drawn (kind "none") among them'),
  remainder: z.object({ probability: z.number(), message: z.string() }).describe("that it is none of these"),
  notShown: z
    .array(z.object(alternativeAnswer))
    .describe("departures that none of these takes would show; the meter shows most of them"),
  notShownSorts: z.array(sortAnswer).describe("the same by sort"),
  takes: z.array(takeAnswer),
  readings: z.array(readingAnswer).describe("the meter's, each beside what the takes would make it read"),
  contradictions: z.array(z.string()).describe("which reading contradicts which take, as sentences"),
  recordings: z.array(z.object({ file: z.string(), ...recordingFields })),
  parts: z.array(partAnswer).describe("of the best answer"),
  together: z.array(togetherAnswer),
  considered: z.int().describe("how many departures were weighed"),
  nextTake: plannedTake.nullable().describe("the take that would tell the leading answers apart"),
  nextMeasurement: diagnoseAnswerSchema.shape.nextMeasurement.describe("the same with a meter, where no take does"),
  floor: z.object({ fraction: z.number(), source: z.string() }).describe("what the model of a coil is trusted to"),
  priors: z.string(),
  notes: z.array(z.string()),
  cautions: z.array(z.string()),
});

export const examineAnswerSchema = z.discriminatedUnion("kind", [planAnswer, examinedAnswer]);

export type ExamineAnswer = Answered<typeof examineAnswerSchema>;
export type PlanAnswer = Extract<ExamineAnswer, { kind: "plan" }>;
export type ExaminedAnswer = Extract<ExamineAnswer, { kind: "examined" }>;
export type PlannedTakeAnswer = PlanAnswer["takes"][number];
