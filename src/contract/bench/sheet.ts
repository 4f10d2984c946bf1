import * as z from "zod";
import { PIECE_MEANS } from "../../bench/sheet/pieces/piece.ts";
import { auditAnswer } from "./audit.ts";
import { ohmsAnswer, readingAnswer } from "./meter-reading.ts";
import { allowancesAnswer, wireKindAnswer } from "./sheet-fields.ts";
import { heatAnswer } from "./sheet-heat.ts";

const strings = z.array(z.string());

const pieceAnswer = z.object({
  number: z.int(),
  means: z.enum(PIECE_MEANS).describe("a part's own lead or leg, or what is cut, bent or braided"),
  stops: strings.describe("where it goes, one after another: lugs, or a splice by the name of its first lead"),
  grown: z.boolean().describe("it grows out of its first stop, with nothing to solder there"),
  wires: z
    .array(z.int())
    .describe("the build's wires that it stands for, from 1; none: it serves a second destination"),
  insteadOf: z.string().optional().describe("where the build has its end, in the same net"),
});

const cutAnswer = z.object({
  wire: z.int().describe("the piece's number"),
  from: z.string(),
  to: z.string(),
  onTo: strings.describe("where its bared end goes on to, in order"),
  means: z.string(),
  kind: wireKindAnswer,
  colour: z.string().describe("ground has one of its own, where reels allow"),
  run: z.number().describe("metres along the guard's edges"),
  cut: z.number().describe("metres to cut: run, slack or service loop and both bared ends; or the build's own length"),
  strips: z.tuple([z.number(), z.number()]).describe("metres bared at the first end and at the last"),
  ready: z.string().describe("how its ends are made ready"),
});

const endAnswer = z.object({
  lead: z.string().optional().describe("the lug of a part's own lead or leg; it is soldered once, here"),
  wire: z.int().optional().describe("the number of any other piece"),
  from: z.string().describe("the lug that it comes from; of a lead its own"),
  means: z.enum(PIECE_MEANS),
  colour: z.string().optional(),
  onTo: z.string().optional().describe("where its bared end or leg goes on to"),
});

const waitingAnswer = z.object({
  lead: z.string().optional(),
  wire: z.int().optional(),
  at: z.string(),
  joint: z.int().describe("the later joint that takes it"),
});

const jointAnswer = z.object({
  number: z.int().describe("from 1, through the whole sheet"),
  kind: z.enum(["case", "lug", "splice"]),
  at: z.string().describe("the lug; of a splice the first of its leads"),
  ends: z.array(endAnswer).describe("what meets here, all of it in place before the one heating"),
  waits: z.array(waitingAnswer).describe("ends that hang free from here on"),
  heat: heatAnswer,
  text: z.string(),
});

const checkAnswer = z.object({
  text: z.string(),
  between: z.tuple([z.string(), z.string()]).optional(),
  low: ohmsAnswer.optional(),
  high: ohmsAnswer.optional(),
});

const stageAnswer = z.object({
  title: z.string(),
  parts: strings,
  joints: z.array(jointAnswer),
  checks: z.array(checkAnswer).describe("before going on to the next stage"),
});

const sittingAnswer = z.object({
  title: z.string(),
  stages: z.array(stageAnswer),
  readings: z
    .array(readingAnswer)
    .describe("what the meter shows when the sitting is done; the harness alone after the first"),
  audit: auditAnswer,
});

const reelAnswer = z.object({
  colour: z.string(),
  kind: wireKindAnswer,
  pieces: z.int(),
  metres: z.number(),
  withSpare: z.number().describe("metres with one mistake to spare: the longest piece once more"),
  has: z.number().nullable().describe("metres on the reel; null where not known"),
  suffices: z.boolean().nullable().describe("with one mistake to spare; null where not known"),
});

const weighedAnswer = z
  .object({
    landing: z.object({
      points: z.number(),
      isProven: z.boolean().describe("no other landing of the open ends has fewer points"),
    }),
    order: z.object({
      points: z.number(),
      hanging: z.int().describe("joints made while a wire's other end hangs free, added up over wires"),
      isProven: z.boolean().describe("no other order of the stages has fewer points"),
    }),
    moved: z
      .array(z.object({ end: z.string(), from: z.string(), to: z.string(), text: z.string() }))
      .describe("ends that are somewhere else of their net than the build has them, and why"),
  })
  .describe("what the schedule weighed; points stand for trouble at the bench");

export const sheetAnswer = z
  .object({
    cautions: strings,
    preparations: strings,
    pieces: z
      .array(pieceAnswer)
      .describe("the physical pieces: leads, legs, wires; together they make the build's nets"),
    cuts: z.array(cutAnswer),
    allowances: allowancesAnswer,
    sittings: z.array(sittingAnswer).describe("the harness first, testable alone; then the pickups"),
    reels: z.array(reelAnswer).describe("what is taken from each reel"),
    weighed: weighedAnswer,
    notes: strings,
  })
  .describe("what to solder in which order");
