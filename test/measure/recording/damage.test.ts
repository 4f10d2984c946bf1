import { expect, it } from "vitest";
import { createRandom } from "../../../src/audio/random.ts";
import { clockOf } from "../../../src/measure/recording/clock.ts";
import { damageOf } from "../../../src/measure/recording/damage.ts";
import { BODIES, MARKS } from "../../../src/measure/signal/layout.ts";

const RATE_HZ = 48_000;
const AS_PLAYED = clockOf(MARKS)!;

/** A second about the first pass's start, all of it a tone as the pass may hold. */
function pass(valueAt: (tone: number, n: number) => number): Float32Array {
  const samples = new Float32Array(Math.round((BODIES[0]!.from + BODIES[0]!.seconds) * RATE_HZ));
  return samples.map((_, n) => valueAt(Math.sin(0.31 * n), n));
}

const clippedAt = (low: number, high: number) => (value: number) => Math.max(low, Math.min(high, value));
const steps = (value: number, bits: number) => Math.round(value * 2 ** (bits - 1)) / 2 ** (bits - 1);

it.each([16, 24])("clipped on both rails of %d bits, which are not alike, is clipped", (bits) => {
  const rails = clippedAt(-1, 1 - 2 ** (1 - bits));
  const clipped = pass((tone) => steps(rails(1.3 * tone), bits));
  expect(damageOf(clipped, RATE_HZ, AS_PLAYED, 0)).toBe("clipped");
});

it("clipped before the converter, with hiss on the flat tops, is clipped; the same below its ceiling is not", () => {
  const random = createRandom(3);
  const hiss = () => 3e-5 * (random() / 2 ** 31 - 1);
  const ceiling = clippedAt(-0.6, 0.6);
  const loud = pass((tone) => ceiling(0.75 * tone) + hiss());
  const soft = pass((tone) => ceiling(0.59 * tone) + hiss());
  expect(damageOf(loud, RATE_HZ, AS_PLAYED, 0)).toBe("clipped");
  expect(damageOf(soft, RATE_HZ, AS_PLAYED, 0)).toBeUndefined();
});

it("one sample lost between two marks spoils the pass between them, whatever the clocks", () => {
  const heard = MARKS.map((mark, i) => mark * (1 + 40e-6) - (i > 0 ? 1 / RATE_HZ : 0));
  expect(clockOf(heard)!.whole).toEqual([false, true, true]);
  const clocks = MARKS.map((mark) => mark * (1 + 300e-6));
  expect(clockOf(clocks)!.whole).toEqual([true, true, true]);
});
