import * as z from "zod";
import { oneOf, strict } from "../../build-file/zod-tools.ts";
import {
  MAX_LABELLINGS_LISTED,
  MAX_LEAD_NAME_CHARS,
  MAX_LEAD_TESTS,
  MAX_LEADS,
  MAX_LUG_NAME_CHARS,
  MAX_NAME_CHARS,
  MIN_LEADS,
} from "../../limits.ts";
import { buildField, longFormJson } from "../fields.ts";
import type { Answered, Sent } from "../wire.ts";
import { meterField } from "./meter-field.ts";
import { ohmsRead, temperatureField } from "./probe-fields.ts";

const name = z.string().trim().min(1).max(MAX_LEAD_NAME_CHARS);
const leadPair = (meaning: string) => z.tuple([name, name]).describe(meaning);

const WHAT_IS_UP =
  'which way the needle goes first as a steel tip is pulled off the row, + on the first lead and − on the second: "up" is a ' +
  "forward coil over north with + on its finish, by definition";

export const leadsRequestSchema = strict({
  leads: z
    .array(name)
    .min(MIN_LEADS, `expected at least ${MIN_LEADS} leads`)
    .max(MAX_LEADS, `expected at most ${MAX_LEADS} leads`)
    .describe("the leads by names of one's own, the metal's among them"),
  coils: z
    .union([z.literal(1), z.literal(2)], { error: () => "expected 1 or 2" })
    .optional()
    .describe("how many coils; left out: as many as rows are named, else either"),
  rows: z
    .array(name)
    .min(1)
    .max(2, "expected at most 2 rows")
    .optional()
    .describe('rows of poles by names of one\'s own, one a coil: ["screws", "slugs"]'),
  readings: z
    .array(
      strict({
        between: leadPair("the two leads that the probes touch"),
        ohms: ohmsRead,
        low: ohmsRead
          .optional()
          .describe("ohms, lowest that the display wandered to; left out: the meter's error is 1 %"),
        high: ohmsRead.optional().describe("ohms, highest that the display wandered to"),
      }),
    )
    .max(MAX_LEAD_TESTS)
    .default([]),
  kicks: z
    .array(strict({ row: name, between: leadPair(WHAT_IS_UP), kick: oneOf(["up", "down", "none"]) }))
    .max(MAX_LEAD_TESTS)
    .default([]),
  compass: z
    .array(
      strict({
        row: name,
        draws: oneOf(["north", "south"]).describe(
          'the end of a compass needle that the top of the row draws; "north" is the end that points north, which a south pole draws',
        ),
      }),
    )
    .max(MAX_LEAD_TESTS)
    .default([]),
  metal: z
    .union([z.literal("none"), z.array(strict({ lead: name, ohms: ohmsRead })).max(MAX_LEAD_TESTS)], {
      error: () => 'expected a list of readings, or "none" where the pickup has no metal',
    })
    .default([])
    .describe('readings from a lead to cover, base plate or braid; "none" where the pickup has none of them'),
  temperature: temperatureField,
  meter: meterField,
  build: buildField.optional().describe("the guard that it is to go into"),
  place: z
    .string()
    .min(1)
    .max(MAX_LUG_NAME_CHARS)
    .optional()
    .describe(
      "the pickup of the guard whose place it takes, or the free lug of a harness; given together with `build`",
    ),
  reference: strict({
    pickup: z.string().min(1).max(MAX_NAME_CHARS),
    kick: oneOf(["up", "down"]),
  })
    .optional()
    .describe(
      "what the same meter did on a pickup of the guard, + on the jack's tip: sets what up is there. Without it the needle is " +
        "taken to go as the guard says",
    ),
}).superRefine(({ build, place, reference }, context) => {
  const isMissing = (path: string, message: string) => context.addIssue({ code: "custom", path: [path], message });
  if (build !== undefined && place === undefined)
    isMissing("place", "is missing; expected a pickup's name beside `build`");
  if (build === undefined && (place ?? reference) !== undefined)
    isMissing("build", "is missing; expected the guard that `place` or `reference` is in");
});

const pole = z.enum(["north", "south"]);
const leadNames = z.array(z.string());

const labellingAnswer = z.object({
  probability: z.number(),
  coils: z.array(
    z.object({
      row: z.string(),
      start: z.string().nullable().describe("its lead; null where none is joined to it"),
      finish: z.string().nullable(),
      winding: z.literal("forward").describe("by convention; see `convention`"),
      magnet: pole.describe("the top of its poles"),
      resistance: z.number().nullable().describe("ohms at 20 °C; null where it is open inside"),
      resistanceError: z
        .number()
        .nullable()
        .describe("relative standard error; far over 0.01 where it was not measured"),
      broken: z.boolean().describe("open inside"),
    }),
  ),
  joined: z.enum(["one", "apart", "series", "parallel"]).describe("how the coils are joined inside"),
  tap: z.string().nullable().describe("of coils in series, the lead at their joint"),
  metal: z.object({
    at: z
      .enum(["drain", "tied", "unreached"])
      .describe("a lead of its own, tied to a coil's end, or reached by no lead"),
    leads: leadNames,
  }),
  leads: z.array(z.object({ lead: z.string(), is: z.string() })),
  text: z.string(),
});

const hookupAnswer = z.object({
  name: z.enum(["single coil", "series", "parallel", "joined inside", "one coil of two"]),
  coil: z.int().nullable().describe("of one coil of two: which, from 0"),
  hot: leadNames,
  ground: leadNames,
  link: leadNames.describe("soldered together and to nothing else"),
  insulate: leadNames,
  cancelsHum: z.boolean().nullable().describe("null of one coil alone"),
  aids: z.boolean().describe("whether the coils' signals aid each other"),
  kick: z.enum(["up", "down"]).describe("with + on hot and − on ground"),
  text: z.string(),
});

const wiringAnswer = {
  main: hookupAnswer.nullable().describe("the usual way; null where it cannot be wired whole"),
  alternatives: z.array(hookupAnswer),
  metal: z.string().nullable(),
  text: z.string(),
};

const testAnswer = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("reading"), between: z.tuple([z.string(), z.string()]) }),
  z.object({ kind: z.literal("metal"), lead: z.string() }),
  z.object({ kind: z.literal("kick"), row: z.string(), between: z.tuple([z.string(), z.string()]) }),
  z.object({ kind: z.literal("compass"), row: z.string() }),
]);

export const leadsAnswerSchema = z.object({
  labellings: z.array(labellingAnswer).describe(`best first, at most ${MAX_LABELLINGS_LISTED}`),
  notListed: z.object({ count: z.int(), probability: z.number().describe("of all of them together") }),
  leads: z
    .array(z.object({ lead: z.string(), may: z.array(z.object({ is: z.string(), probability: z.number() })) }))
    .describe("what each lead may be, over all labellings"),
  convention: z.string(),
  certain: z.array(z.string()).describe("what 99 % of the belief agrees on"),
  cannotTell: z.array(z.string()).describe("what no further test of these kinds can decide"),
  doubts: z
    .array(z.object({ path: z.string().describe("of the request"), text: z.string() }))
    .describe("results that the likeliest labelling takes for misread"),
  wiring: z.object({
    ...wiringAnswer,
    agreed: z.number().describe("how much of the belief is wired so, hot and ground perhaps exchanged"),
  }),
  withGuard: z
    .object({
      place: z.string(),
      name: z.string().nullable().describe("of the pickup in the guard; null where it cannot be wired whole"),
      text: z.string(),
      wiring: z.object(wiringAnswer).nullable().describe("in phase with most of the guard's other pickups"),
      beside: z.array(z.object({ pickup: z.string(), cancelsHum: z.boolean(), text: z.string() })),
    })
    .nullable(),
  guard: z.any().meta({ ...longFormJson, description: "The guard with this pickup in its place, wired; or null" }),
  next: z
    .object({
      test: testAnswer,
      bits: z.number().describe("expected information"),
      outcomes: z.array(
        z.object({ shows: z.string().describe("open, joint, ohms, up, down, none, north, south"), share: z.number() }),
      ),
      label: z.string(),
      instruction: z.string(),
    })
    .nullable()
    .describe("the test that tells most; null where none tells any more"),
  cautions: z.array(z.string()),
});

export type LeadsRequest = Sent<typeof leadsRequestSchema>;
export type LeadsBody = z.output<typeof leadsRequestSchema>;
export type LeadsAnswer = Answered<typeof leadsAnswerSchema>;
