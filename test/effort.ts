import { test } from "vitest";

/** Whether all is gone through, as `npm run test:all` does; `npm test` takes a sample of it. */
const isThorough = process.env.EFFORT === "all";

/** How many random inputs, trials or settings: `all` where all is gone through. */
export function effort(sample: number, all: number): number {
  return isThorough ? all : sample;
}

/**
 * So many of all cases, from the first to the last of them. @param most how many where all would be gone through, if they are more
 * than anybody waits for
 */
export function casesOf<T>(all: readonly T[], sample: number, most = all.length): readonly T[] {
  const count = isThorough ? most : sample;
  if (all.length <= count) return all;
  return Array.from(
    { length: count },
    (_, index) => all[Math.round((index * (all.length - 1)) / Math.max(count - 1, 1))]!,
  );
}

type Run = () => Promise<void> | void;

/** A test of which there is no sample: there where all is gone through, and elsewhere not even skipped. */
export const thoroughly: (title: string, ...rest: [Run] | [options: { timeout?: number }, run: Run]) => void =
  isThorough
    ? (title, ...rest) => (rest.length === 1 ? test(title, rest[0]) : test(title, rest[0], rest[1]))
    : () => {};
