import * as z from "zod";
import { oneOf, quantity, strict } from "../build-file/zod-tools.ts";
import { AUDIBILITIES } from "../choice/compare/verdict.ts";
import { SERIES_NAMES } from "../choice/search/e-series.ts";
import { MAX_CANDIDATES, MAX_FREE_PARTS, MAX_LUG_NAME_CHARS, MAX_MODELS, MAX_VALUE_CHARS } from "../limits.ts";
import { featuresAnswer } from "./answer-fields.ts";
import { buildField, settingsField } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

const written = z.union([z.number(), z.string().max(MAX_VALUE_CHARS)]);
const choices = {
  values: z.array(written).min(1).max(MAX_CANDIDATES).optional().describe("what is in the drawer"),
  series: oneOf(SERIES_NAMES).optional().describe("of IEC 60063"),
  from: written.optional().describe("the lowest value of the series"),
  to: written.optional().describe("the highest value of the series"),
};
const orNone = z.boolean().default(false).describe("whether leaving the part out is a choice too");
const name = z.string().min(1).max(MAX_LUG_NAME_CHARS);
const pair = z.tuple([name, name]);

const freeField = z.union(
  [
    strict({ part: name.describe("a cap, resistor or pot of the build"), orNone, ...choices }),
    strict({ taper: name.describe("a pot whose fraction at half rotation is free"), values: choices.values }),
    strict({ cable: z.literal(true).describe("the cable's length"), values: choices.values }),
    strict({
      add: oneOf(["cap", "resistor"]),
      between: pair.describe("two lugs to put it across, such as a load resistor from hot to ground"),
      orNone,
      ...choices,
    }),
    strict({ inWire: pair.describe("a wire to cut for a resistor in series"), orNone, ...choices }),
    strict({
      bleed: name.describe("a volume pot to put a treble bleed across"),
      style: oneOf(["cap", "parallel", "series"]).default("parallel"),
    }),
  ],
  { error: () => 'expected one of "part", "taper", "cable", "add" with "between", "inWire" or "bleed"' },
);

const wishField = z.discriminatedUnion(
  "kind",
  [
    strict({
      kind: z.literal("peak"),
      frequency: quantity("frequency", { above: 0, max: 20_000 }, "where the peak should stand"),
      settings: settingsField.default({}),
    }),
    strict({ kind: z.literal("tone-halfway"), settings: settingsField.default({}) }),
    strict({
      kind: z.literal("keeps-treble"),
      dial: z.number().gt(0).lt(10).default(5).describe("the volume that should sound as 10 does, only softer"),
      settings: settingsField.default({}),
    }),
    strict({
      kind: z.literal("as-bright"),
      settings: settingsField.describe("the setting to be made as bright"),
      as: z.array(settingsField).min(1).max(MAX_MODELS).describe("as the mean of these"),
    }),
    strict({
      kind: z.literal("like"),
      build: buildField,
      like: settingsField.default({}).describe("of the other build"),
      settings: settingsField.default({}).describe("of this build"),
    }),
  ],
  { error: () => 'expected an object whose "kind" is "peak", "tone-halfway", "keeps-treble", "as-bright" or "like"' },
);

export const searchRequestSchema = strict({
  build: buildField,
  free: z.array(freeField).min(1).max(MAX_FREE_PARTS),
  wish: wishField,
});

const scoreFields = {
  cost: z.number().describe("distance from the wish; see `costMeaning`"),
  says: z.string(),
};

const foundAnswer = z.object({
  ...scoreFields,
  values: z.array(
    z.object({
      name: z.string(),
      unit: z.enum(["farads", "ohms", "metres", "fraction"]),
      value: z.number().nullable().describe("null: left out"),
    }),
  ),
  elsewhere: z
    .array(
      z.object({
        label: z.string(),
        loudnessDifference: z.number().describe("LU"),
        largest: z.object({
          difference: z.number().describe("dB, loudness matched"),
          frequency: z.number(),
          band: z.tuple([z.number(), z.number()]),
        }),
        features: z.tuple([featuresAnswer, featuresAnswer]),
        audible: z.enum(AUDIBILITIES).describe("of the strings played through a 12-inch guitar speaker"),
        verdict: z.string(),
      }),
    )
    .describe("what the choice changes in other settings, against the build as it stands"),
});

export const searchAnswerSchema = z.object({
  combinations: z.number(),
  tried: z.int(),
  exhaustive: z.boolean(),
  method: z.string(),
  costMeaning: z.string(),
  now: z.object(scoreFields).nullable().describe("the build as it stands; null where the wish means nothing for it"),
  best: z.array(foundAnswer).describe("best first, at most ten"),
});

export type SearchRequest = Sent<typeof searchRequestSchema>;
export type FreeRequest = SearchRequest["free"][number];
export type WishRequest = SearchRequest["wish"];
export type SearchBody = z.output<typeof searchRequestSchema>;
export type FreeBody = SearchBody["free"][number];
export type WishBody = SearchBody["wish"];
export type SearchAnswer = Answered<typeof searchAnswerSchema>;
export type FoundAnswer = SearchAnswer["best"][number];
