import { decibels } from "../../decibels.ts";
import type { ForetoldTap } from "./foretold-taps.ts";
import type { HeardTap } from "./hear-taps.ts";
import { HAND_DB, LEAK_DB, ROW_DB } from "./tap-levels.ts";

const SURE = 0.8;

/** ln density of values that scatter about a mean by hand, and about the expected one together. */
function together(values: readonly number[], spread: number): number {
  const count = values.length;
  const mean = values.reduce((sum, each) => sum + each, 0) / count;
  const square = spread ** 2 + HAND_DB ** 2 / count;
  return -(mean * mean) / (2 * square) - Math.log(square) / 2;
}

/**
 * Whether a coil on another's magnet, all its settings taken together, is heard through that other alone: each by itself its level may
 * lie between.
 * @param gain of the take, dB
 */
export function isDeadHalf(heard: readonly HeardTap[], foretold: readonly ForetoldTap[], gain: number): boolean {
  const over = (expected: (tap: ForetoldTap) => number) =>
    heard.map(({ level, floor }, i) => (level ?? floor) - gain - decibels(expected(foretold[i]!)));
  const alive = together(
    over(({ re, im }) => Math.hypot(re, im)),
    ROW_DB,
  );
  const dead = together(
    over(({ leak }) => leak),
    LEAK_DB,
  );
  // Louder than it should be, or fainter than a leak, needs no weighing.
  const mean = over(({ re, im }) => Math.hypot(re, im)).reduce((sum, each) => sum + each, 0) / heard.length;
  return mean < 0 && 1 / (1 + Math.exp(alive - dead)) > SURE;
}
