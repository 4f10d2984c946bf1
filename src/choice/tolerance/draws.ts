import type { Guard } from "../guard.ts";
import { createUniform } from "../uniform.ts";
import type { CelsiusRange } from "./drift.ts";
import { drawPatches, spreadOf } from "./spread.ts";

export const DEFAULT_DRAWS = 2000;
export const DEFAULT_SEED = 1;

export interface DrawOptions {
  readonly draws?: number;
  readonly seed?: number;
  /** What the caps are to be had at; 25 °C where absent. */
  readonly celsius?: CelsiusRange | undefined;
  /** Called between draws; may throw to give the work up. */
  readonly checkpoint?: () => void;
}

/** Guards built from one parts list, one after another, always the same for the same seed. */
export function* drawGuards(guard: Guard, draws: number, seed: number, celsius?: CelsiusRange): Generator<Guard> {
  const spread = spreadOf(guard.build, celsius);
  const uniform = createUniform(seed);
  for (let draw = 0; draw < draws; draw++) yield guard.with(drawPatches(spread, uniform));
}
