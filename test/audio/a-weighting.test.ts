import { expect, test } from "vitest";
import { aWeight } from "../../src/audio/a-weighting.ts";

/** IEC 61672-1, table 3: A-weighting at nominal frequencies, dB to one decimal, at 1000·10^(n/10) Hz (from memory). */
const TABLE: readonly (readonly [n: number, db: number])[] = [
  [-17, -50.5],
  [-13, -30.2],
  [-10, -19.1],
  [-7, -10.9],
  [-4, -4.8],
  [0, 0],
  [3, 1.2],
  [4, 1.3],
  [6, 1],
  [9, -1.1],
  [10, -2.5],
  [12, -6.6],
  [13, -9.3],
];

test.each(TABLE)("the A curve at 1000·10^(%i/10) Hz is %f dB", (n, db) => {
  expect(Math.abs(20 * Math.log10(aWeight(1000 * 10 ** (n / 10))) - db)).toBeLessThan(0.051);
});
