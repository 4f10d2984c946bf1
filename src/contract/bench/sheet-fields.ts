import * as z from "zod";
import { DEFAULT_SHEET_OPTIONS, SHEET_BOUNDS } from "../../bench/sheet/options.ts";
import { DEFAULT_ALLOWANCES } from "../../bench/sheet/wire/allowances.ts";
import { DEFAULT_KINDS } from "../../bench/sheet/wire/wire-kinds.ts";
import { WIRE_KINDS } from "../../build-file/wire-kinds.ts";
import { oneOf, quantity, strict } from "../../build-file/zod-tools.ts";
import { MAX_REELS } from "../../limits.ts";

const [LEAST, MOST] = SHEET_BOUNDS.allowance;

const allowance = (meaning: string, usual: number) =>
  quantity("length", { min: LEAST, max: MOST }, meaning).default(usual);

export const allowancesField = strict({
  slack: allowance("added to a wire that stays on the guard; jumpers get none", DEFAULT_ALLOWANCES.slack),
  strip: allowance("bared at each end", DEFAULT_ALLOWANCES.strip),
  jackLoop: allowance("added instead of slack to a wire to the jack", DEFAULT_ALLOWANCES.jackLoop),
  clawLoop: allowance("added instead of slack to a wire to the claw", DEFAULT_ALLOWANCES.clawLoop),
  foilLength: allowance("the shortest wire to a shielding foil", DEFAULT_ALLOWANCES.foilLength),
})
  .default(DEFAULT_ALLOWANCES)
  .describe("what the cut list adds to a wire's run along the guard's edges");

export const allowancesAnswer = z
  .object({
    slack: z.number(),
    strip: z.number(),
    jackLoop: z.number(),
    clawLoop: z.number(),
    foilLength: z.number(),
  })
  .describe("metres");

const wireKind = oneOf(WIRE_KINDS);
export const wireKindAnswer = z.enum(WIRE_KINDS);

export const reelsField = z
  .array(
    strict({
      colour: z.string().trim().min(1).max(30).toLowerCase(),
      kind: wireKind.default("plastic"),
      metres: quantity("length", { above: 0, max: SHEET_BOUNDS.reelMetres }, "what is left on it").optional(),
    }),
  )
  .max(MAX_REELS)
  .default([])
  .describe("the reels of wire that a person has; two are enough where ground differs from hot. None: black and white");

export const kindsField = strict({
  hot: wireKind.default(DEFAULT_KINDS.hot),
  ground: wireKind.default(DEFAULT_KINDS.ground),
  jack: wireKind.default(DEFAULT_KINDS.jack).describe("from the guard to the jack's tip"),
})
  .default(DEFAULT_KINDS)
  .describe("which kind of wire to take for what; bus wires are bare");

export const maxEndsField = z
  .int()
  .min(SHEET_BOUNDS.maxEnds[0])
  .max(SHEET_BOUNDS.maxEnds[1])
  .default(DEFAULT_SHEET_OPTIONS.maxEnds)
  .describe("at most so many ends a joint, as far as the nets leave a way");
