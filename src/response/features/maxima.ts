import type { GridPowers } from "./grid-powers.ts";

/** For samples that hardly differ. */
const MARGIN = 1.01;

/** The power at a maximum about a sample, as it may be at most: as far above it as it is above its lower neighbour. */
function mostAbout(powers: GridPowers, i: number): number {
  const own = powers.at(i);
  return (MARGIN * own * own) / Math.min(powers.at(i - 1), powers.at(i + 1));
}

/** Whether the curve seems to have a maximum about a sample, for all that its powers may be off. */
function mayBeMaximum(powers: GridPowers, i: number): boolean {
  return !powers.isSurelyAbove(i - 1, i) && !powers.isSurelyAbove(i + 1, i);
}

/**
 * Samples about which the curve has a maximum that may reach a power.
 * @param from the first of them at the earliest
 * @param to the last, at the latest
 */
export function maximaReaching(powers: GridPowers, from: number, to: number, power: number): number[] {
  const found: number[] = [];
  for (let i = from; i <= to; i++)
    if (mayBeMaximum(powers, i) && mostAbout(powers, i) >= power && isMaximum(powers, i)) found.push(i);
  return found;
}

/** As the plain solution has it; @returns whether neighbours do not exceed a sample */
function isMaximum(powers: GridPowers, i: number): boolean {
  return powers.isAbove(i, i - 1) && !powers.isAbove(i + 1, i);
}

/** The least that the highest of these maxima is. */
export function highestSample(powers: GridPowers, from: number, to: number): number {
  let highest = 0;
  for (let i = from; i <= to; i++) {
    const power = powers.at(i);
    if (power > highest && power > powers.at(i - 1) && power >= powers.at(i + 1)) highest = power;
  }
  return highest;
}
