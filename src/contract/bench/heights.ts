import * as z from "zod";
import { heightsShape } from "../../bench/heights/request-shape.ts";
import { strict } from "../../build-file/zod-tools.ts";
import { namedSettings } from "../answer-fields.ts";
import { buildField } from "../fields.ts";
import type { Answered, Sent } from "../wire.ts";

export const heightsRequestSchema = strict({
  build: buildField,
  from: buildField
    .optional()
    .describe("the guard that is in the guitar now, for what changes with the new one: `habits`"),
  ...heightsShape,
});

const figures = {
  level: z.number().describe("dB, at the heights as they are"),
  off: z
    .number()
    .describe("dB: of a position, from the level all are to come to; of a string, from its position's mean"),
  offAfter: z.number().nullable().describe("the same once the screws are turned; null where no turns are told"),
  errorAfter: z.number().nullable().describe("± of the latter, 95 %"),
};

const positionAnswer = z.object({
  settings: namedSettings,
  label: z.string(),
  ...figures,
  strings: z.array(z.object(figures)).describe("from string 1, the highest"),
});

const screwAnswer = z.object({
  side: z.enum(["bass", "treble"]),
  gapBefore: z.number().describe("metres, under the outer string, pressed at the last fret"),
  gapAfter: z.number(),
  travel: z.number().describe("metres that this side of the pickup travels at its screw; more is lower"),
  travelError: z.number().describe("± metres before rounding, 95 %"),
  turns: z.number().nullable().describe("in whole eighths, more is lower; null where a pitch is not known"),
  turnsError: z.number().nullable().describe("± before rounding, 95 %"),
  direction: z.enum(["down", "up", "stays"]),
  clockwise: z.boolean(),
  stoppedBy: z.enum(["min", "max"]).nullable().describe("the limit that it would go beyond"),
  text: z.string(),
});

const pickupAnswer = z.object({
  name: z.string(),
  law: z.object({
    exponent: z.number().describe("level falls as the gap to this power, in the middle of the gaps recorded"),
    exponentError: z.number().describe("±, 95 % by Student's t"),
    offset: z
      .number()
      .describe(
        "metres added to the gap before it is raised to a power; 0 unless recordings at three heights ask for it",
      ),
    perMillimetre: z.number().describe("dB that a millimetre lower takes, at the gap as it is"),
    text: z.string(),
  }),
  screws: z.array(screwAnswer).describe("bass, then treble"),
  pull: z
    .object({ bass: z.number(), treble: z.number() })
    .describe("a rod magnet's pull on a string after over before, by the field on its axis"),
});

const habitsAnswer = z.object({
  heights: z.array(z.string()),
  volume: z.array(
    z.object({
      position: z.int().describe("of the main switch"),
      difference: z.number().nullable().describe("dB, the new guard minus the old one; null where either is silent"),
      dial: z
        .number()
        .nullable()
        .describe(
          "where louder, the new volume's dial that is the old one at 10; where softer, the old one's that is the new at 10",
        ),
      text: z.string(),
    }),
  ),
  tone: z.array(
    z.object({
      position: z.int(),
      before: z.array(z.string()).describe("tone pots that worked there"),
      after: z.array(z.string()),
      dials: z.array(
        z.object({
          from: z.number().describe("the old dial"),
          to: z.number().nullable().describe("the new one of the same cutoff; null where there is none"),
          cutoff: z.number().describe("Hz"),
        }),
      ),
      text: z.string(),
    }),
  ),
  notes: z.array(z.string()),
});

export const heightsAnswerSchema = z.object({
  basis: z
    .enum(["model", "one height", "recordings"])
    .describe("what the levels are; turns are told from recordings at two heights or more alone"),
  precision: z.number().nullable().describe("dB, standard deviation of one string's level in one recording"),
  pickups: z.array(pickupAnswer),
  positions: z.array(positionAnswer),
  balanced: z
    .object({ positions: z.boolean(), strings: z.boolean() })
    .nullable()
    .describe("whether all will be within `target.within`; null where no turns are told"),
  left: z.array(z.string()).describe("what no screw can do, and which limit stops one"),
  warnings: z.array(z.string()).describe("of the magnets' pull, and of heights that no recording reached"),
  next: z.array(z.string()).describe("what to do or to record now"),
  assumed: z.array(z.string()).describe("what was taken as usual"),
  habits: habitsAnswer.nullable().describe("what changes for the player; null without `from`"),
});

export type HeightsRequest = Sent<typeof heightsRequestSchema>;
/** What is asked beside the builds. */
export type HeightsAsked = Omit<HeightsRequest, "build" | "from">;
export type HeightsRequestBody = z.output<typeof heightsRequestSchema>;
export type HeightsAnswer = Answered<typeof heightsAnswerSchema>;
