import type { Parameter } from "../../meter/resistors.ts";
import type { Fault } from "../fault.ts";
import {
  BY_AGE,
  FAULT_SHARES,
  type FaultKind,
  type JointAge,
  SECOND_FAULT_SHARE,
  SOUND_SHARE,
} from "../priors/fault-shares.ts";

export interface PriorOptions {
  /** Whether somebody heard that something is wrong. */
  readonly isComplainedOf: boolean;
  readonly joints?: JointAge | undefined;
}

/** How many faults of each kind a guard can have. */
export type FaultCounts = Readonly<Partial<Record<FaultKind, number>>>;

/** How common a kind is on a guard whose joints are of this age; any measure, to be compared with others of it. */
export function kindWeight(kind: FaultKind, joints: JointAge | undefined): number {
  const { share, origin } = FAULT_SHARES[kind];
  return joints === undefined ? share : share * BY_AGE[joints][origin];
}

/** Counts what can be wrong with a guard: the faults listed, and those whose value is solved from the readings. */
export function countFaults(listed: readonly Fault[], solved: FaultCounts): FaultCounts {
  const counts: Partial<Record<FaultKind, number>> = { ...solved };
  for (const { kind } of listed) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
}

/** Parts that can carry another value than the build's, by what that fault is called. */
export function valueCounts(parameters: readonly Parameter[]): FaultCounts {
  const counts = { "coil-value": 0, "pot-value": 0, "resistor-value": 0 };
  for (const { coil, gang } of parameters)
    counts[coil !== undefined ? "coil-value" : gang !== undefined ? "pot-value" : "resistor-value"]++;
  return counts;
}

/**
 * ln of the probability, before any reading, that a guard has just these faults: none, one, or two.
 * @param counts how many faults of each kind it can have
 */
export function createPrior(
  counts: FaultCounts,
  { isComplainedOf, joints }: PriorOptions,
): (faults: readonly Fault[]) => number {
  const soundShare = isComplainedOf ? SOUND_SHARE.complainedOf : SOUND_SHARE.measured;
  const kinds = Object.entries(counts).filter(([, count]) => count > 0) as [FaultKind, number][];
  const total = kinds.reduce((sum, [kind]) => sum + kindWeight(kind, joints), 0);
  const logOf = new Map(kinds.map(([kind, count]) => [kind, Math.log(kindWeight(kind, joints) / total / count)]));
  return (faults) => {
    if (faults.length === 0) return Math.log(soundShare);
    const each = faults.map(({ kind }) => logOf.get(kind)!);
    // Two faults may come in either order.
    const share = faults.length === 1 ? 1 - SECOND_FAULT_SHARE : 2 * SECOND_FAULT_SHARE;
    return Math.log((1 - soundShare) * share) + each.reduce((sum, value) => sum + value, 0);
  };
}
