import { isJoint, JOINT_UP_TO_OHMS } from "../../meter/hobby-meter.ts";
import type { Observation } from "./observation.ts";

/** How often the end of a track reads no more than a joint does (common practice, no source). */
const LIKE_A_JOINT = 0.5;
/** Tracks are up to a fifth larger than printed, and with them what 1 % of one is. */
const TRACK_SLACK = 1.2;
const METER_DEVIATIONS = 3;

/**
 * ln of the density, in ln R, of a reading that the end of a pot's track decides: like a joint, or evenly on a log scale up to
 * what data sheets allow; undefined where the reading lies outside.
 * @param nominal ohms with the wiper quite at the end
 * @param upTo ohms with it as far off as data sheets allow
 */
export function logAtPotEnd({ ohms, above, logError }: Observation, nominal: number, upTo: number): number | undefined {
  const slack = 1 + METER_DEVIATIONS * logError;
  const most = upTo * TRACK_SLACK * slack;
  const span = Math.log(most / Math.max(nominal, JOINT_UP_TO_OHMS));
  if (above !== undefined) return above < most ? Math.log(1 - LIKE_A_JOINT) : undefined;
  if (ohms > most) return undefined;
  if (!isJoint(nominal)) return ohms * slack < nominal ? undefined : -Math.log(span);
  return isJoint(ohms) ? Math.log(LIKE_A_JOINT) : Math.log((1 - LIKE_A_JOINT) / span);
}
