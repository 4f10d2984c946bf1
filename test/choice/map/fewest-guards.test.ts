import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fewestGuards } from "../../../src/choice/map/fewest-guards.ts";
import { createUniform } from "../../../src/choice/uniform.ts";

/** Every choice of guards, by counting through their bits. */
function bruteForce(sounds: readonly (readonly number[])[], guards: number): number {
  let fewest = guards;
  for (let chosen = 0; chosen < 2 ** guards; chosen++) {
    const size = Array.from({ length: guards }, (_, guard) => (chosen >> guard) & 1).reduce((sum, bit) => sum + bit, 0);
    if (size < fewest && sounds.every((has) => has.some((guard) => (chosen >> guard) & 1))) fewest = size;
  }
  return fewest;
}

const covers = (sounds: readonly (readonly number[])[], guards: readonly number[]) =>
  sounds.every((has) => has.some((guard) => guards.includes(guard)));

describe("the fewest guards", () => {
  it("are as many as going through all choices finds", () => {
    const problem = fc
      .integer({ min: 1, max: 10 })
      .chain((count) =>
        fc.tuple(
          fc.constant(count),
          fc.array(fc.uniqueArray(fc.integer({ min: 0, max: count - 1 }), { minLength: 1 }), { maxLength: 25 }),
        ),
      );
    fc.assert(
      fc.property(problem, ([count, sounds]) => {
        const { guards, isFewest, atLeast } = fewestGuards(sounds);
        expect(covers(sounds, guards)).toBe(true);
        expect([guards.length, isFewest, atLeast]).toEqual([bruteForce(sounds, count), true, guards.length]);
      }),
    );
  });

  it("are fewer than a greedy choice takes", () => {
    // The greedy one begins with guard 2, which has most, and then needs both others.
    const sounds = [[0], [0, 2], [0, 2], [1], [1, 2], [1, 2]];
    expect(fewestGuards(sounds)).toEqual({ guards: [0, 1], isFewest: true, atLeast: 2 });
  });

  it("of no sounds are none", () => {
    expect(fewestGuards([])).toEqual({ guards: [], isFewest: true, atLeast: 0 });
  });

  it("of twenty guards are always found, of many more told between two counts", () => {
    const uniform = createUniform(5);
    const problem = (guards: number, sounds: number, each: number) =>
      Array.from({ length: sounds }, () => Array.from({ length: each }, () => Math.floor(guards * uniform())));
    expect(fewestGuards(problem(20, 120, 3)).isFewest).toBe(true);
    const many = problem(60, 150, 4);
    const found = fewestGuards(many);
    expect(covers(many, found.guards)).toBe(true);
    expect(found.isFewest).toBe(false);
    expect(found.atLeast).toBeGreaterThan(0);
    expect(found.atLeast).toBeLessThanOrEqual(found.guards.length);
  });

  it("are not to be had of a sound that no guard has", () => {
    expect(() => fewestGuards([[0], []])).toThrow("sounds[1] is had by no guard; expected at least one");
  });

  it("can be called off", () => {
    const sounds = Array.from({ length: 400 }, (_, i) => [i % 150, (7 * i + 3) % 150, (31 * i + 11) % 150]);
    const checkpoint = () => {
      throw new Error("enough");
    };
    expect(() => fewestGuards(sounds, { checkpoint })).toThrow("enough");
  });
});
