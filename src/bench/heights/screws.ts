import type { Gaps } from "./gaps.ts";

/** A pickup on two screws, as it stands and as far as it may go. */
export interface MountedPickup {
  readonly name: string;
  readonly gaps: Gaps;
  /** What a whole turn travels; undefined until it is measured. */
  readonly pitchMetres: { readonly bass: number | undefined; readonly treble: number | undefined };
  readonly limits: { readonly minMetres: number; readonly maxMetres: number };
  /** How much farther apart the screws stand than the outer strings. */
  readonly lever: number;
  readonly clockwiseLowers: boolean;
  readonly magnet: { readonly radiusMetres: number; readonly lengthMetres: number };
  /** Nearer than this the magnet's pull is warned of. */
  readonly pullMetres: number;
  /** What was taken for want of a value, in words. */
  readonly assumed: readonly string[];
}

export const SIDES = ["bass", "treble"] as const;
export type Side = (typeof SIDES)[number];

/** An eighth of a turn: finer than a screwdriver's handle shows. */
export const TURN_STEP = 1 / 8;

export function gapOf(gaps: Gaps, side: Side): number {
  return side === "bass" ? gaps.bassMetres : gaps.trebleMetres;
}

/** Whether both gaps lie within the pickup's limits, rounding aside. */
export function isWithin({ limits }: MountedPickup, { bassMetres, trebleMetres }: Gaps): boolean {
  const slack = 1e-9;
  return [bassMetres, trebleMetres].every((gap) => gap >= limits.minMetres - slack && gap <= limits.maxMetres + slack);
}
