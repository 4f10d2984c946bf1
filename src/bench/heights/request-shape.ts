import * as z from "zod";
import { oneOf, quantity, strict } from "../../build-file/zod-tools.ts";
import { MAX_HEIGHT_ROWS, MAX_MOVED_PICKUPS, MAX_NAME_CHARS, MAX_STRINGS, MAX_VALUE_CHARS } from "../../limits.ts";

const gap = (meaning: string) => quantity("length", { above: 0, max: 0.05 }, meaning);
const GAP = "from the string's underside, pressed at the last fret, to the pole under it";

const screw = strict({
  gap: gap(`${GAP}: under the outer string of this side`),
  pitch: quantity(
    "length",
    { above: 0, max: 0.01 },
    "what a whole turn of this screw travels: count ten turns, measure, divide by ten; left out, the answer is in millimetres",
  ).optional(),
});

const pickup = strict({
  bass: screw,
  treble: screw,
  limits: strict({
    min: gap("the least gap wanted on either side; default 1.5 mm").optional(),
    max: gap("the greatest; default 6 mm").optional(),
  })
    .refine(({ min = 0, max = 1 }) => min <= max, { path: ["max"], message: "expected a gap not under `min`" })
    .optional(),
  clockwiseLowers: z
    .boolean()
    .optional()
    .describe("whether a screw turned clockwise lowers the pickup; default false, as where it hangs from the guard"),
  screwsApart: quantity("length", { above: 0, max: 0.2 }, "between both screws; default 76 mm").optional(),
  stringsApart: quantity("length", { above: 0, max: 0.2 }, "between the outer strings there; default 50 mm").optional(),
  magnet: strict({
    diameter: quantity("length", { above: 0, max: 0.05 }, "of a pole's magnet; default 4.8 mm").optional(),
    length: quantity("length", { above: 0, max: 0.1 }, "of the same; default 17 mm").optional(),
  })
    .optional()
    .describe("for the magnet's pull alone"),
  pullBelow: gap("nearer than this the magnet's pull is warned of; default 2 mm").optional(),
});

const pair = strict({ bass: gap(GAP), treble: gap(GAP) });
const heightSet = z
  .record(z.string().min(1).max(MAX_NAME_CHARS), pair)
  .describe("gaps by pickup; one that is left out stands as `pickups` has it");
const settings = z
  .record(z.string().min(1).max(MAX_NAME_CHARS), z.union([z.number(), z.string().max(MAX_VALUE_CHARS)]))
  .describe("as everywhere: controls left out stand at 10, in position 1, down");

const EXPECTED_DB = "expected a number of dB, such as -20.5";
const level = z
  .number({ error: () => EXPECTED_DB })
  .min(-200)
  .max(200);

/** What a question about heights holds beside the builds. */
export const heightsShape = {
  pickups: z
    .record(z.string().min(1).max(MAX_NAME_CHARS), pickup)
    .refine(
      (pickups) => Object.keys(pickups).length <= MAX_MOVED_PICKUPS,
      `expected at most ${MAX_MOVED_PICKUPS} pickups`,
    )
    .default({})
    .describe("pickups whose screws may be turned, as they stand now; without any the model's levels alone are told"),
  heights: z
    .record(z.string().min(1).max(MAX_NAME_CHARS), heightSet)
    .refine((sets) => Object.keys(sets).length <= MAX_HEIGHT_ROWS, `expected at most ${MAX_HEIGHT_ROWS} sets`)
    .default({})
    .describe("heights of all pickups by a name of one's own, for `levels` to refer to"),
  levels: z
    .array(
      strict({
        heights: z
          .union([z.string().max(MAX_NAME_CHARS), heightSet], {
            error: () => "expected the name of a set of `heights`, or gaps by pickup",
          })
          .default({})
          .describe("the heights at which it was recorded: a name from `heights`, or gaps; left out: as in `pickups`"),
        settings,
        strings: z
          .array(level)
          .min(1)
          .max(MAX_STRINGS)
          .describe("dB of each open string, from string 1, the highest; as /api/string-levels measures them"),
      }),
    )
    .max(MAX_HEIGHT_ROWS)
    .default([])
    .describe("levels of every open string: a row for each position at each height, two heights or more"),
  target: strict({
    within: z
      .number({ error: () => "expected a number of dB, such as 1" })
      .min(0.1)
      .max(20)
      .default(1)
      .describe("dB that positions and strings may be off"),
    reference: settings
      .optional()
      .describe("the position whose level the others are to come to; left out: they meet where the screws move least"),
    matter: oneOf(["positions", "both"]).default("both").describe("whether strings within a position matter besides"),
  }).default({ within: 1, matter: "both" }),
};

export const heightsBodySchema = strict(heightsShape);
export type HeightsBody = z.output<typeof heightsBodySchema>;
export type PickupBody = HeightsBody["pickups"][string];
