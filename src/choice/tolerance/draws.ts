import type { Guard } from "../guard.ts";
import { createUniform } from "../uniform.ts";
import type { CelsiusRange } from "./drift.ts";
import { drawEnds, endSpreadsOf } from "./end-spread.ts";
import { drawPatches, spreadOf } from "./spread.ts";

export const DEFAULT_DRAWS = 2000;
export const DEFAULT_SEED = 1;

/** So far off that the two streams have nothing in common. */
const END_STREAM = 0x40000000;

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
  const ends = endSpreadsOf(guard.build);
  const uniform = createUniform(seed);
  // A stream of their own: with or without them the other values are drawn alike.
  const forEnds = createUniform(seed + END_STREAM);
  for (let draw = 0; draw < draws; draw++)
    yield guard.with([...drawPatches(spread, uniform), ...drawEnds(ends, forEnds)]);
}
