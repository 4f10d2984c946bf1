import type { Settings } from "../../build-file/settings.ts";
import type { Drive } from "../drive.ts";
import { heardDifference } from "../ear/heard-difference.ts";
import { type HeardSound, heardSound, type Through } from "../ear/heard-sound.ts";
import { energiesFor, type Guard } from "../guard.ts";
import { DEFAULT_DRAWS, DEFAULT_SEED, type DrawOptions, drawGuards } from "./draws.ts";
import { percentiles } from "./percentiles.ts";

/** Largest difference of any band that is heard between two guards of the same list, in dB. */
export interface PairSpread {
  readonly median: number;
  /** 95 % of pairs differ by no more. */
  readonly high: number;
}

interface PairOptions extends DrawOptions {
  readonly through?: Through;
}

/**
 * How much two guards built from the same list differ in each setting, by the measure that comparisons use. The same guards
 * serve every setting; every guard is in one pair only.
 */
export function pairSpreads(
  guard: Guard,
  settings: readonly Settings[],
  drive: Drive,
  { draws = DEFAULT_DRAWS, seed = DEFAULT_SEED, checkpoint = () => {}, through }: PairOptions = {},
): PairSpread[] {
  const differences = settings.map((): number[] => []);
  let waiting: HeardSound[] | undefined;
  for (const drawn of drawGuards(guard, draws, seed)) {
    checkpoint();
    const sounds = settings.map((setting) => heardSound(energiesFor(drawn.transfers(setting), drive), through));
    if (!waiting) {
      waiting = sounds;
      continue;
    }
    for (const [index, first] of waiting.entries()) {
      // Guards of one list are silent together: then nothing but the room is left of either.
      differences[index]!.push(Math.abs(heardDifference(first, sounds[index]!).largest.db));
    }
    waiting = undefined;
  }
  return differences.map((list) => {
    const { middle, high } = percentiles(list)!;
    return { median: middle, high };
  });
}
