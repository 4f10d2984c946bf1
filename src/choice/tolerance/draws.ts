import type { Guard } from "../guard.ts";
import { createUniform } from "../uniform.ts";
import { drawPatches, spreadOf } from "./spread.ts";

export const DEFAULT_DRAWS = 2000;
export const DEFAULT_SEED = 1;

export interface DrawOptions {
  readonly draws?: number;
  readonly seed?: number;
  /** Called between draws; may throw to give the work up. */
  readonly checkpoint?: () => void;
}

/** Guards built from one parts list, one after another, always the same for the same seed. */
export function* drawGuards(guard: Guard, draws: number, seed: number): Generator<Guard> {
  const spread = spreadOf(guard.build);
  const uniform = createUniform(seed);
  for (let draw = 0; draw < draws; draw++) yield guard.with(drawPatches(spread, uniform));
}
