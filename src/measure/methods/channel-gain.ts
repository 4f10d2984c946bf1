import { faultAt } from "../../errors.ts";
import { ratio, sizeOf, type Uncertain } from "../impedance/uncertain.ts";

/** By how much two inputs' gains differ whose knobs are set alike by eye: a fraction (common practice, no source). */
export const UNKNOWN_GAIN = 0.03;

/** Channels that one point drives differ by their knobs alone; by more than this, one of them was not on it. */
const MOST_GAIN = 4;

/** @throws DATA_INSUFFICIENT where one of the channels was not on the point that both should have been on */
export function requireGain(gain: readonly Uncertain[], path: string): void {
  const sizes = gain.map(sizeOf).sort((a, b) => a - b);
  const middle = sizes[Math.floor(sizes.length / 2)]!;
  if (middle >= 1 / MOST_GAIN && middle <= MOST_GAIN) return;
  const message =
    `has the channel behind the resistor ${middle.toPrecision(2)} times as strong as the other; expected both channels on one point, ` +
    `their gains within a factor of ${MOST_GAIN}`;
  throw faultAt("DATA_INSUFFICIENT", path, message);
}

/** What stands behind the resistor over what stands before it, the inputs' own gains taken out where they were recorded. */
export const inGain = (ratios: readonly Uncertain[], gain: readonly Uncertain[] | undefined): readonly Uncertain[] =>
  gain ? ratios.map((each, i) => ratio(each, gain[i]!)) : ratios;

/**
 * What an unknown gain seems to put across the part, either way, siemens: from V2/V1 = g·Z/(R + Z) it is 1/Z = (g·V1/V2 − 1)/R, so
 * that a wrong g scales the impedance and leaves (g − 1)/R beside it, of which an input measured in the same way takes its own.
 */
export const siemensOfGain = (resistorOhms: number) => UNKNOWN_GAIN / resistorOhms;

export const UNKNOWN_GAIN_NOTE =
  `Without a recording of both inputs on one point (\`gain\`) their gains are taken as alike; they may differ by some ${100 * UNKNOWN_GAIN} %, and every value with` +
  " them, which its standard error does not hold.";
