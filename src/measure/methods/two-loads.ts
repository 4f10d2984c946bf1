import type { RatioSweep } from "../../choice/fit/loaded-ratio.ts";
import { faultAt } from "../../errors.ts";
import { pointsOf, ratio, sizeOf } from "../impedance/uncertain.ts";
import type { Transfer } from "../recording/passes.ts";

/** What was put across the pickup, and how well it is known. */
export type KnownLoad = RatioSweep["load"] & Pick<RatioSweep, "tolerance">;

/** What an exciter's coil and an interface let through, and where a pickup has anything to tell. */
const FROM_HZ = 60;
const TO_HZ = 15_000;
/** A point that noise may move by more tells nothing. */
const MOST_RELATIVE_ERROR = 0.1;
const LEAST_POINTS = 40;
const DEGREES = 180 / Math.PI;
const DECIBELS_PER_NEPER = 20 / Math.LN10;

/** The angles without jumps of a whole turn. */
function unwrapped(angles: readonly number[]): number[] {
  let turns = 0;
  return angles.map((angle, i) => {
    if (i > 0) turns -= Math.round((angle - angles[i - 1]!) / (2 * Math.PI));
    return angle + 2 * Math.PI * turns;
  });
}

/**
 * Angles with the delay taken out that lies between two recordings: both ends of a ratio of voltages are real, the low one where
 * coil and load only divide, the high one where only capacitances do. What is left of it a fit finds.
 */
function inTime(angles: readonly number[], frequenciesHz: readonly number[]): number[] {
  const last = frequenciesHz.length - 1;
  const slope = (angles[last]! - angles[0]!) / (frequenciesHz[last]! - frequenciesHz[0]!);
  return angles.map((angle, i) => angle - slope * frequenciesHz[i]!);
}

/**
 * One coil, recorded with nothing but the instrument across it and with a known load: their ratio, in which whatever drives the coil,
 * and what metal takes of its EMF, cancels.
 * @param path the recording under the load
 * @throws DATA_INSUFFICIENT where too little stands above the noise
 */
export function ratioOfLoads(
  unloaded: Transfer,
  loaded: Transfer,
  { tolerance, ...load }: KnownLoad,
  freeDelay: boolean,
  path = "loaded",
): RatioSweep {
  const [above, below] = [pointsOf(unloaded), pointsOf(loaded)];
  const points = Array.from(unloaded.frequenciesHz, (hz, i) => ({ hz, z: ratio(above[i]!, below[i]!) })).filter(
    ({ hz, z }) => hz >= FROM_HZ && hz <= TO_HZ && z.sd < MOST_RELATIVE_ERROR * sizeOf(z),
  );
  if (points.length < LEAST_POINTS) {
    const message = `only ${points.length} of its frequencies stand above the noise, expected at least ${LEAST_POINTS}; bring the exciter nearer, or turn the output up`;
    throw faultAt("DATA_INSUFFICIENT", path, message);
  }
  const frequenciesHz = points.map(({ hz }) => hz);
  const angles = unwrapped(points.map(({ z }) => Math.atan2(z.im, z.re)));
  return {
    frequenciesHz,
    levelsDb: points.map(({ z }) => DECIBELS_PER_NEPER * Math.log(sizeOf(z))),
    degrees: (freeDelay ? inTime(angles, frequenciesHz) : angles).map((angle) => DEGREES * angle),
    errors: points.map(({ z }) => z.sd / sizeOf(z)),
    load,
    tolerance,
    freeDelay,
  };
}
