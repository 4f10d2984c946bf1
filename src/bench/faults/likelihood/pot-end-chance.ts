import { isJoint, JOINT_UP_TO_OHMS } from "../../meter/hobby-meter.ts";
import type { Observation } from "./observation.ts";

/** A reading that a track's end can raise by more than this factor is the end's own; below, the end only blurs it. */
const OWN_FACTOR = 2;

/** Whether the end of a pot's track decides a reading. */
export function isOfPotEnd(nominal: number, upTo: number): boolean {
  return upTo !== nominal && (isJoint(nominal) || upTo > OWN_FACTOR * nominal);
}

/**
 * Ends scatter evenly on a log scale from an ohm up: most lie far below the most that they may have, but of those to 1 % of
 * 500 kΩ one in twelve is in its upper half. So the most lies at two standard deviations, where a normal has as many.
 */
const SPREAD_SHARE = 1 / 2;

/** How far the ends of tracks in its way blur a reading: standard deviation of ln R. */
export function potEndDeviation(nominal: number, upTo: number): number {
  return upTo === nominal || isOfPotEnd(nominal, upTo) ? 0 : SPREAD_SHARE * Math.log(upTo / nominal);
}

/** How often the end of a track reads no more than a joint does (common practice, no source). */
const LIKE_A_JOINT = 0.5;
/** Tracks are up to a fifth larger than printed, and with them what 1 % of one is. */
const TRACK_SLACK = 1.2;
const METER_DEVIATIONS = 3;

/** ln of how often such an end reads no more than so many ohms; undefined for never. @param span of what it may read, in ln R */
function logBelow(below: number, nominal: number, span: number): number | undefined {
  const share = Math.min(1, Math.max(0, Math.log(below / Math.max(nominal, JOINT_UP_TO_OHMS)) / span));
  const chance = isJoint(nominal) ? LIKE_A_JOINT + (1 - LIKE_A_JOINT) * share : share;
  return chance > 0 ? Math.log(chance) : undefined;
}

/**
 * ln of the density, in ln R, of a reading that the end of a pot's track decides: like a joint, or evenly on a log scale up to
 * what data sheets allow; undefined where the reading lies outside.
 * @param nominal ohms with the wiper quite at the end
 * @param upTo ohms with it as far off as data sheets allow
 */
export function logAtPotEnd(
  { ohms, above, below, logError }: Observation,
  nominal: number,
  upTo: number,
): number | undefined {
  const slack = 1 + METER_DEVIATIONS * logError;
  const most = upTo * TRACK_SLACK * slack;
  const span = Math.log(most / Math.max(nominal, JOINT_UP_TO_OHMS));
  if (below !== undefined) return logBelow(below, nominal, span);
  if (above !== undefined) return above < most ? Math.log(1 - LIKE_A_JOINT) : undefined;
  if (ohms > most) return undefined;
  if (!isJoint(nominal)) return ohms * slack < nominal ? undefined : -Math.log(span);
  return isJoint(ohms) ? Math.log(LIKE_A_JOINT) : Math.log((1 - LIKE_A_JOINT) / span);
}
