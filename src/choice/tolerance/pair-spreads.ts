import type { Settings } from "../../build-file/settings.ts";
import { levelMatchedDifference } from "../compare/difference.ts";
import type { Drive } from "../drive.ts";
import { energiesFor, type Guard } from "../guard.ts";
import { DEFAULT_DRAWS, DEFAULT_SEED, type DrawOptions, drawGuards } from "./draws.ts";
import { percentiles } from "./percentiles.ts";

/** Largest level-matched band difference between two guards of the same list, in dB. */
export interface PairSpread {
  readonly median: number;
  /** 95 % of pairs differ by no more. */
  readonly high: number;
}

/**
 * How much two guards built from the same list differ in each setting, by the measure that comparisons use. The same guards
 * serve every setting; every guard is in one pair only.
 */
export function pairSpreads(
  guard: Guard,
  settings: readonly Settings[],
  drive: Drive,
  { draws = DEFAULT_DRAWS, seed = DEFAULT_SEED, checkpoint = () => {} }: DrawOptions = {},
): PairSpread[] {
  const differences = settings.map((): number[] => []);
  let waiting: Float64Array[] | undefined;
  for (const drawn of drawGuards(guard, draws, seed)) {
    checkpoint();
    const energies = settings.map((setting) => energiesFor(drawn.transfers(setting), drive));
    if (!waiting) {
      waiting = energies;
      continue;
    }
    for (const [index, first] of waiting.entries()) {
      const difference = levelMatchedDifference(first, energies[index]!);
      differences[index]!.push(difference.silent.includes(true) ? 0 : Math.abs(difference.largest.db));
    }
    waiting = undefined;
  }
  return differences.map((list) => {
    const { middle, high } = percentiles(list)!;
    return { median: middle, high };
  });
}
