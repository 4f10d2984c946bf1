import type { ImpedanceTable } from "../../choice/fit/fit-impedance.ts";
import { faultAt } from "../../errors.ts";
import { type Ratios, type Rig, seriesResistor } from "../impedance/series-resistor.ts";
import { pointsOf, ratio, sizeOf, type Uncertain } from "../impedance/uncertain.ts";
import type { Transfer } from "../recording/passes.ts";
import { inGain } from "./channel-gain.ts";

/** Two channels of one recording: before the resistor, and behind it. */
export interface Pair {
  readonly before: Transfer;
  readonly behind: Transfer;
}

export const ratiosOf = ({ before, behind }: Pair): Ratios => {
  const [a, b] = [pointsOf(behind), pointsOf(before)];
  return a.map((each, i) => ratio(each, b[i]!));
};

const HIGHER_GAIN =
  "; or the second input's gain stands higher: then record both inputs on one point besides, as `gain`";

/** Behind a resistor nothing passive is louder; a tenth covers two channels' gains. */
const LOUDER = 1.1;

/**
 * @param isGainKnown whether the inputs' own gains are taken out of the ratios
 * @throws DATA_INSUFFICIENT where the channels must have been swapped
 */
export function requireOrder(ratios: Ratios, path: string, isGainKnown: boolean): void {
  const louder = ratios.filter((each) => sizeOf(each) > LOUDER).length;
  if (louder <= ratios.length / 2) return;
  const message = `the voltage behind the resistor is higher than before it: the channels are swapped. Say channels: behind-before, or change the plugs over${isGainKnown ? "" : HIGHER_GAIN}`;
  throw faultAt("DATA_INSUFFICIENT", path, message);
}

const FROM_HZ = 40;
const TO_HZ = 18_000;
const MOST_RELATIVE_ERROR = 0.2;
const LEAST_POINTS = 40;

/** An impedance at one frequency. */
export interface Point extends Uncertain {
  readonly hz: number;
}

/** Behind the resistor hardly anything is heard, or the same as before it. */
const NOTHING_SHARE = 2e-3;
const ALL_WITHIN = 0.01;

function whyFew(shares: Ratios): string {
  const sizes = shares.map(sizeOf).sort((a, b) => a - b);
  const middle = sizes[Math.floor(sizes.length / 2)]!;
  if (middle < NOTHING_SHARE)
    return "hardly anything is heard behind the resistor: look whether that input is plugged in and not muted, and what is measured not shorted, or take a smaller resistor";
  if (shares.every((each) => Math.hypot(each.re - 1, each.im) < ALL_WITHIN))
    return "both inputs hear the same: look whether the resistor lies between them, and what is measured behind it, or take a larger resistor";
  return "take a resistor nearer to what is measured, or turn the output up";
}

/**
 * What stands behind the resistor, where it can be told from noise.
 * @throws DATA_INSUFFICIENT where it can be told at too few frequencies
 */
export function impedanceBehind(ratios: Ratios, frequenciesHz: Float64Array, resistorOhms: number, rig: Rig): Point[] {
  const points = seriesResistor(ratios, resistorOhms, rig)
    .map((z, i): Point => ({ ...z, hz: frequenciesHz[i]! }))
    .filter((z) => z.hz >= FROM_HZ && z.hz <= TO_HZ && z.sd < MOST_RELATIVE_ERROR * sizeOf(z));
  if (points.length >= LEAST_POINTS) return points;
  const message = `the impedance is told at ${points.length} frequencies, expected at least ${LEAST_POINTS}; ${whyFew(inGain(ratios, rig.gain))}`;
  throw faultAt("DATA_INSUFFICIENT", "measured", message);
}

const DEGREES = 180 / Math.PI;

export function tableOf(points: readonly Point[]): ImpedanceTable {
  return {
    frequenciesHz: points.map(({ hz }) => hz),
    ohms: points.map(sizeOf),
    degrees: points.map(({ re, im }) => DEGREES * Math.atan2(im, re)),
    errors: points.map((z) => z.sd / sizeOf(z)),
  };
}
