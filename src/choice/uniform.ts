import { createRandom } from "../audio/random.ts";

/** A repeatable stream of numbers evenly spread over 0 to 1. @param seed a whole number */
export function createUniform(seed: number): () => number {
  // The generator refuses 0, and small seeds need some rounds before their bits are mixed.
  const next = createRandom(Math.imul(seed, 0x9e3779b1) ^ 0x2545f491 || 1);
  for (let i = 0; i < 20; i++) next();
  return () => next() / 2 ** 32;
}
