import { test } from "vitest";

/** Whether all is gone through, as `npm run test:all` does; `npm test` takes a sample of it. */
const isThorough = process.env.EFFORT === "all";

/** How many random inputs, trials or settings: `all` where all is gone through. */
export function effort(sample: number, all: number): number {
  return isThorough ? all : sample;
}

/** All cases, or a sample of so many from the first to the last of them. */
export function casesOf<T>(all: readonly T[], sample: number): readonly T[] {
  if (isThorough || all.length <= sample) return all;
  return Array.from({ length: sample }, (_, index) => all[Math.round((index * (all.length - 1)) / (sample - 1))]!);
}

/** A test of which there is no sample: there where all is gone through, and elsewhere not even skipped. */
export const thoroughly: (title: string, options: { timeout?: number }, run: () => Promise<void>) => void = isThorough
  ? test
  : () => {};
