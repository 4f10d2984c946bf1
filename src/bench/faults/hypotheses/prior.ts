import { FAULT_WEIGHTS, type Fault } from "../fault.ts";

/** Half of the guards that somebody measures are sound, and few of those that somebody complains of (no source). */
const SOUND_SHARE = { measured: 0.5, complainedOf: 0.05 } as const;
/** Two faults at once, beside one (common practice, no source). */
const SECOND_FAULT_SHARE = 0.2;

/**
 * ln of the probability, before any reading, that a guard has just these faults: none, one, or two.
 * @param possible every fault that it can have
 * @param isComplainedOf whether somebody heard that something is wrong
 */
export function createPrior(possible: readonly Fault[], isComplainedOf: boolean): (faults: readonly Fault[]) => number {
  const soundShare = isComplainedOf ? SOUND_SHARE.complainedOf : SOUND_SHARE.measured;
  const totalWeight = possible.reduce((sum, { kind }) => sum + FAULT_WEIGHTS[kind], 0);
  return (faults) => {
    if (faults.length === 0) return Math.log(soundShare);
    const each = faults.map(({ kind }) => Math.log(FAULT_WEIGHTS[kind] / totalWeight));
    const share = faults.length === 1 ? 1 - SECOND_FAULT_SHARE : SECOND_FAULT_SHARE;
    return Math.log((1 - soundShare) * share) + each.reduce((sum, value) => sum + value, 0);
  };
}
