import * as z from "zod";
import { PRESET_NAMES } from "../../bench/room/figures.ts";
import { DEFAULT_BESIDE_METRES, DEFAULT_TOLERANCE_METRES, SIDES } from "../../bench/room/measures.ts";
import { partName } from "../../build-file/part-schemas.ts";
import { oneOf, quantity, strict } from "../../build-file/zod-tools.ts";
import {
  MAX_CAVITIES,
  MAX_DEPTH_METRES,
  MAX_NAME_CHARS,
  MAX_OUTLINE_POINTS,
  MAX_PARTS,
  MAX_REACH_METRES,
  MAX_SCREWS,
} from "../../limits.ts";

const at = (meaning: string) => quantity("length", { min: -MAX_REACH_METRES, max: MAX_REACH_METRES }, meaning);
const size = (meaning: string) => quantity("length", { above: 0, max: MAX_REACH_METRES }, meaning);
const depth = (meaning: string) => quantity("length", { above: 0, max: MAX_DEPTH_METRES }, meaning);
const mayBeOff = (meaning: string) => quantity("length", { min: 0, max: 0.02 }, meaning);

const point = z.tuple(
  [at("x, from the bridge towards the neck"), at("y, from the bass side towards the treble side")],
  {
    error: () => "expected [x, y]",
  },
);

const line = z
  .array(point, { error: () => "expected a list of [x, y] points" })
  .min(3, "expected at least three points")
  .max(MAX_OUTLINE_POINTS, `expected at most ${MAX_OUTLINE_POINTS} points`);

const screws = z
  .array(point)
  .max(MAX_SCREWS, `expected at most ${MAX_SCREWS} screws`)
  .describe("middles of screws; a part's are about its own middle");

const sizes = z.tuple([size("along the strings"), size("across the strings")], {
  error: () => "expected [along the strings, across them]",
});

const shape = z
  .union([oneOf(PRESET_NAMES), strict({ round: size("diameter") }), strict({ box: sizes }), line], {
    error: () =>
      `expected one of ${PRESET_NAMES.map((name) => `"${name}"`).join(", ")}, or {"round"}, {"box": [along, across]} or a list of points`,
  })
  .describe("about the part's middle, the part not turned");

const standout = strict({
  side: oneOf(SIDES).describe("of the part, not turned"),
  reach: size("from the part's middle to its farthest point"),
  width: size("across that"),
});

const partMeasures = strict({
  outline: shape.optional(),
  depth: depth("from the guard's underside to its lowest point, lugs and wires included").optional(),
  ears: sizes.optional().describe("from end to end, ears and base plate included"),
  lugs: standout.optional(),
  cable: standout.optional(),
  poleSpacing: size("from the first pole's middle to the last's").optional(),
  bushing: depth("length of its thread; left out: as the part is sold").optional(),
  hole: shape.optional(),
  screws: screws.optional(),
});

const cavity = strict({
  name: z.string().trim().min(1).max(MAX_NAME_CHARS),
  outline: line,
  depth: depth("from the face that the guard lies on to its floor").optional(),
  for: z
    .array(partName)
    .max(MAX_PARTS)
    .optional()
    .describe("parts that are to lie in it; left out: whichever go in best, and none that another cavity names"),
  tolerance: mayBeOff(
    "by which its line may be off; left out: the usual. A line from a photograph says more",
  ).optional(),
});

/** What is measured of a body and of what is to go into it. */
export const measuresShape = {
  cavities: z
    .array(cavity)
    .max(MAX_CAVITIES, `expected at most ${MAX_CAVITIES} cavities`)
    .describe("holes in the body, in the frame of the parts' places; one that runs into another is drawn as one line"),
  parts: z
    .record(partName, partMeasures)
    .default({})
    .describe("a person's own measures, by the build's names; what is left out is asked for, never taken for granted"),
  strings: strict({
    nut: size("from the first string's middle to the last's, at the nut"),
    bridge: size("the same at the bridge"),
    scale: size("left out: the build's").optional(),
    beside: mayBeOff("that an outer string may pass beside its pole").default(DEFAULT_BESIDE_METRES),
  }).optional(),
  guard: strict({
    outline: line.optional(),
    thickness: depth("of its plate").optional(),
    stack: depth("nut, washers and what else lies about a bushing, one on the other").optional(),
    screws: screws.optional(),
    screwDiameter: depth("of the screws' holes in the wood").optional(),
  }).default({}),
  tolerance: mayBeOff("by which a measured line may be off; two lines are off twice as much").default(
    DEFAULT_TOLERANCE_METRES,
  ),
};
