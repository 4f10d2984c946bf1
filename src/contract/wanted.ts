import * as z from "zod";
import { PICKUP_TYPE_NAMES } from "../build-file/catalogue/pickup-types.ts";
import { planFormSchema } from "../build-file/expand.ts";
import { partName } from "../build-file/part-schemas.ts";
import { PLAN_PRESETS } from "../build-file/plans/presets.ts";
import { oneOf, quantity, strict } from "../build-file/zod-tools.ts";
import { FIGURE_NAMES } from "../choice/wanted/figures.ts";
import { POSITIONS_THERE } from "../choice/wanted/reading/places.ts";
import { MOST_POSITIONS } from "../choice/wanted/space/positions.ts";
import { WORD_NAMES } from "../choice/wanted/vocabulary/words.ts";
import { MAX_ASKS, MAX_CANDIDATES, MAX_WISH_CHARS, MAX_WISHES } from "../limits.ts";
import { planJson } from "./fields.ts";
import type { Answered, Sent } from "./wire.ts";

const whereField = z.discriminatedUnion(
  "kind",
  [
    strict({
      kind: z.literal("position"),
      position: z.int({ error: POSITIONS_THERE }).min(1, POSITIONS_THERE).max(MOST_POSITIONS, POSITIONS_THERE),
    }),
    strict({
      kind: z.literal("pickups"),
      pickups: z.array(partName).min(1).max(4).describe("that sound there, and no other"),
    }),
    strict({ kind: z.literal("everywhere").describe("in every position of the main switch; the worst counts") }),
    strict({ kind: z.literal("anywhere").describe("in one setting or another; the best counts") }),
  ],
  { error: () => 'expected an object whose "kind" is "position", "pickups", "everywhere" or "anywhere"' },
);

const end = z.number().min(-1e6).max(1e6);

const targetField = strict({
  figure: oneOf(FIGURE_NAMES),
  low: end.optional(),
  high: end.optional(),
}).refine(({ low, high }) => (low ?? Number.NEGATIVE_INFINITY) <= (high ?? Number.POSITIVE_INFINITY), {
  path: ["high"],
  message: "expected a number not below `low`",
});

const wishField = strict({
  where: whereField,
  asks: z
    .array(
      strict({
        word: oneOf(WORD_NAMES),
        targets: z.array(targetField).min(1).max(FIGURE_NAMES.length).optional().describe("in place of the word's own"),
      }),
    )
    .min(1)
    .max(MAX_ASKS),
});

export const wishesTextField = z
  .string()
  .max(MAX_WISH_CHARS)
  .describe('in plain words, phrase by phrase: "glassy 4, fat bridge that cleans up, hum-free 2"');

const ohms = (meaning: string) => quantity("resistance", { above: 0, max: 1e9 }, meaning);
const farads = (meaning: string) => quantity("capacitance", { above: 0, max: 1e-4 }, meaning);
const values = <Value extends z.ZodType>(value: Value) => z.array(value).min(1).max(MAX_CANDIDATES).optional();

export const wantedRequestSchema = strict({
  text: wishesTextField.optional(),
  wishes: z.array(wishField).min(1).max(MAX_WISHES).optional().describe("in place of `text`"),
  starts: z
    .union(
      [
        z.literal("all"),
        z
          .array(oneOf(PLAN_PRESETS.map(({ id }) => id) as [string, ...string[]]))
          .min(1)
          .max(PLAN_PRESETS.length),
      ],
      { error: () => 'expected "all", or a list of ids of customary guards' },
    )
    .optional()
    .describe(
      "customary guards to begin with, by the ids that the catalogue gives; left out: all of them, or none beside a `plan`",
    ),
  plan: z
    .unknown()
    .optional()
    .meta({ ...planJson, description: "a plan of one's own to begin with, beside those" }),
  pickups: z
    .record(
      partName,
      z
        .array(oneOf(PICKUP_TYPE_NAMES as [string, ...string[]]))
        .min(1)
        .max(PICKUP_TYPE_NAMES.length),
    )
    .default({})
    .describe("what may sit in a place; left out: what sits there, in any wind"),
  values: strict({
    volume: values(ohms("a volume's track")),
    tone: values(ohms("a tone's track")),
    cap: values(farads("a tone cap")),
    bleed: values(
      z.union([
        z.literal("none"),
        strict({ capacitance: farads("of the cap"), parallel: ohms("resistor beside it").optional() }),
      ]),
    ),
  })
    .default({})
    .describe("what pots, tone caps and treble bleeds may be; left out: customary values"),
  switches: z.boolean().default(true).describe("whether switches are added to the best, one after the other"),
  cable: planFormSchema.shape.cable,
  load: planFormSchema.shape.load,
});

const numbers = { low: z.number().optional(), high: z.number().optional() };
const wishAnswer = z.object({
  where: whereField,
  asks: z.array(
    z.object({ word: z.enum(WORD_NAMES), targets: z.array(z.object({ figure: z.enum(FIGURE_NAMES), ...numbers })) }),
  ),
});

export const understoodAnswer = z.object({
  wishes: z.array(wishAnswer),
  unknown: z.array(z.object({ said: z.string(), nearest: z.string().nullable() })),
  notes: z.array(z.string()),
  contradictions: z
    .array(z.object({ where: whereField, words: z.tuple([z.string(), z.string()]), text: z.string() }))
    .describe("words that no sound can be at once"),
});

const guardAnswer = z.object({
  from: z.string().describe("the customary guard that it grew from"),
  changes: z.array(z.string()),
  values: z.array(z.string()).describe("its pots, caps and treble bleed, in words"),
  build: z.unknown().describe("a build file with a plan"),
  cost: z.number().describe("how far it is from the wishes; see `costMeaning`"),
  met: z.int().describe("how many wishes it meets"),
  wishes: z.array(
    z.object({
      where: whereField,
      settings: z
        .record(z.string(), z.union([z.number(), z.string()]))
        .nullable()
        .describe("null: no such place"),
      label: z.string().nullable(),
      met: z.boolean(),
      cost: z.number(),
      asks: z.array(
        z.object({
          word: z.enum(WORD_NAMES),
          met: z.boolean(),
          targets: z.array(
            z.object({
              figure: z.enum(FIGURE_NAMES),
              ...numbers,
              value: z.number().nullable().describe("null: the setting has no such figure"),
              short: z.number().describe("steps outside the target; 0 within it"),
            }),
          ),
        }),
      ),
    }),
  ),
});

export const wantedAnswerSchema = z.object({
  understood: understoodAnswer,
  guards: z.array(guardAnswer).describe("best first, at most ten, and three of one customary guard"),
  tradeOffs: z
    .array(z.object({ wish: z.int(), met: z.boolean(), text: z.string(), guard: guardAnswer }))
    .describe("for every wish that the best guard misses, what meets it or comes nearest, and what that gives up"),
  shapes: z
    .object({ all: z.int(), tried: z.int(), without: z.int(), stepped: z.int() })
    .describe("wirings with their pickups: all, looked at, left out for want of a place, and made by adding switches"),
  trials: z.int().describe("guards with their values that were tried"),
  exhaustive: z.boolean(),
  method: z.string(),
  costMeaning: z.string(),
});

export type WantedRequest = Sent<typeof wantedRequestSchema>;
export type WantedBody = z.output<typeof wantedRequestSchema>;
export type WantedAnswer = Answered<typeof wantedAnswerSchema>;
export type WantedGuard = WantedAnswer["guards"][number];
export type WantedWish = WantedAnswer["understood"]["wishes"][number];
