import * as z from "zod";
import { strict } from "../build-file/zod-tools.ts";
import { DEFAULT_DRAWS, DEFAULT_SEED } from "../choice/tolerance/draws.ts";
import { MAX_DRAWS, MAX_SEED, MIN_DRAWS } from "../limits.ts";

export const drawsFields = {
  draws: z.int().min(MIN_DRAWS).max(MAX_DRAWS).default(DEFAULT_DRAWS).describe("guards drawn from the parts list"),
  seed: z.int().min(0).max(MAX_SEED).default(DEFAULT_SEED).describe("the same seed draws the same guards"),
};

export const drawsField = strict(drawsFields);
