import * as z from "zod";
import { strict } from "../../build-file/zod-tools.ts";
import {
  MAX_LUG_GRID,
  MAX_LUG_NAME_CHARS,
  MAX_NAME_CHARS,
  MAX_SWITCH_LUGS,
  MAX_SWITCH_POSITIONS,
  MAX_TOUCHES,
} from "../../limits.ts";
import { buildField, longFormJson } from "../fields.ts";
import type { Answered, Sent } from "../wire.ts";

const foundName = z.string().trim().min(1).max(MAX_NAME_CHARS);
const gridStep = z
  .int()
  .min(0)
  .max(MAX_LUG_GRID - 1);

const lugField = z
  .union(
    [
      foundName.transform((name) => ({ name })),
      strict({
        name: foundName,
        spot: strict({ x: gridStep.describe("column, from the left"), y: gridStep.describe("row, from the top") })
          .optional()
          .describe("where it sits, seen from the back, in whole columns and rows; of all lugs or of none"),
      }),
    ],
    { error: () => 'expected a name, or {"name", "spot": {"x", "y"}}' },
  )
  .describe("in the person's own words or numbers");

const positionField = z.int().min(1).max(MAX_SWITCH_POSITIONS);
const pairField = z.tuple([foundName, foundName]);

const beepField = strict({
  between: pairField.describe("the two lugs touched"),
  positions: z
    .array(positionField)
    .max(MAX_SWITCH_POSITIONS)
    .optional()
    .describe("those of all positions in which it beeps; empty: in none"),
  position: positionField.optional().describe("instead: one position, with `beeps`"),
  betweenPositions: z
    .tuple([positionField, positionField])
    .optional()
    .describe("instead: the handle held between two neighbouring positions, with `beeps`; tells shorting from not"),
  beeps: z.boolean().optional(),
}).superRefine(({ positions, position, betweenPositions, beeps }, context) => {
  const ways = [positions, position, betweenPositions].filter((way) => way !== undefined).length;
  const fault = (path: string, message: string) => context.addIssue({ code: "custom", path: [path], message });
  if (ways !== 1)
    fault(
      "positions",
      `${ways === 0 ? "is missing" : "is one of several"}; expected one of positions, position and betweenPositions`,
    );
  else if ((beeps === undefined) !== (positions !== undefined))
    fault("beeps", positions ? "expected none beside positions" : "is missing; expected whether it beeps");
  if (betweenPositions && Math.abs(betweenPositions[0] - betweenPositions[1]) !== 1)
    fault("betweenPositions", "expected two positions next to each other");
});

export const switchRequestSchema = strict({
  lugs: z.array(lugField).min(2).max(MAX_SWITCH_LUGS),
  positions: z.int().min(1).max(MAX_SWITCH_POSITIONS).describe("how many the handle has"),
  beeps: z.array(beepField).max(MAX_TOUCHES).default([]),
  errors: z
    .number()
    .min(0)
    .max(0.2)
    .default(0.01)
    .describe("chance that one touch is misheard; the default is ours, no source"),
  build: buildField.optional().describe("the guard to put it in"),
  part: z.string().min(1).max(MAX_NAME_CHARS).optional().describe("the switch of that guard whose place it takes"),
  moves: z
    .record(z.string().max(MAX_LUG_NAME_CHARS), foundName)
    .default({})
    .describe("from a lug of that switch to the found lug that takes its wires, where `asks` asks for it"),
});

const foundNames = z.array(z.string());
const groupsAnswer = z.array(z.array(foundNames));
const pairAnswer = z.tuple([z.string(), z.string()]);
const positionPair = z.tuple([z.int(), z.int()]);

const knownAnswer = z.object({
  type: z.string().nullable(),
  centre: z.string().nullable().describe("of an on-on-on switch"),
  poles: z.int().nullable().describe("of a rotary switch"),
  throws: z.int().nullable().describe("of a rotary switch"),
  body: z.string().nullable().describe("where the lugs sit as in one of its bodies"),
  reversed: z.boolean().describe("the first position as found is the type's last"),
  title: z.string(),
  lugs: z.record(z.string(), z.string()).describe("the type's lug for each found one"),
});

const tableAnswer = z.object({
  probability: z
    .number()
    .describe(
      "0 to 1 among known switches; of few lugs with every misheard beep weighed, of more than eight as long as all was heard right",
    ),
  known: knownAnswer.nullable().describe("null: no known switch, a table of its own"),
  others: z.array(knownAnswer).describe("known switches with the same contacts, which no beeper tells apart"),
  positions: groupsAnswer.describe("the groups of joined lugs in each position, as found"),
  poles: z.array(z.object({ commons: foundNames, throws: foundNames })),
  shorting: z.enum(["yes", "no", "not tried"]).describe("makes the next contact before it breaks the last"),
  part: z
    .any()
    .meta({
      description: "the switch as a part of a build file, its lugs as found; null where its table is too large for one",
    })
    .nullable(),
  text: z.string(),
});

export const switchAnswerSchema = z.object({
  done: z.boolean().describe("one table is left, and likely enough for no misheard beep to have left it alone"),
  isKnown: z.boolean().describe("whether a known switch may beep so; else its own table is found"),
  text: z.string(),
  tables: z.array(tableAnswer).describe("the likeliest, best first"),
  further: z.object({
    tables: z.int().nullable().describe("those left beside them, where they were counted"),
    probability: z.number().describe("0 to 1, of all others together"),
  }),
  next: z
    .object({
      between: pairAnswer,
      again: z.boolean().describe("touched once more, since what was told cannot all be right"),
      why: z.string(),
      outcomes: z
        .array(z.object({ positions: z.array(z.int()), share: z.number() }))
        .describe(
          "in which positions it may beep, and how likely (0 to 1), the likeliest first; none where nothing is known",
        ),
    })
    .nullable()
    .describe("the two lugs to touch next, going through all positions"),
  shortingTest: z
    .object({ between: pairAnswer, betweenPositions: positionPair, text: z.string() })
    .nullable()
    .describe("how to tell whether it is shorting, once the table is known"),
  joined: groupsAnswer.describe("what is known to be joined in each position"),
  tried: z.int().describe("pairs of lugs listened to in all positions"),
  untouched: z.int().describe("all others; only they could make it another switch than a known one"),
  remaining: z.object({
    tables: z
      .int()
      .nullable()
      .describe("contact tables of known switches that are left; null where they are too many to count"),
    bits: z.number().nullable().describe("bits of the choice between them, at most"),
  }),
  contradictions: z
    .array(z.object({ beep: z.int().describe("index in `beeps`"), between: pairAnswer }))
    .describe("what cannot all be right"),
  cautions: z.array(z.string()),
  guard: z
    .any()
    .meta({
      ...longFormJson,
      description:
        "The guard with the likeliest switch in that place; null where none is asked for or lugs are asked about",
    })
    .nullable(),
  asks: z
    .array(z.object({ lug: z.string(), wires: z.array(z.string()).describe("the other ends of its wires") }))
    .describe("lugs of the old switch of which `moves` must say where their wires go"),
});

export type SwitchRequest = Sent<typeof switchRequestSchema>;
export type SwitchBody = z.output<typeof switchRequestSchema>;
export type SwitchAnswer = Answered<typeof switchAnswerSchema>;
