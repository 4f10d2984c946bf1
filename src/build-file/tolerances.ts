import { dielectricOf } from "./catalogue/dielectrics.ts";
import type { Coil, PartOf, Pickup, Pot } from "./schema.ts";

/** Tolerances where a part names none: fractions, common practice, no source. */
export const DEFAULT_TOLERANCES = { pot: 0.2, cap: 0.1, coil: 0.05, resistor: 0.05 } as const;

/** A hobby meter on its ohms ranges: about 1 % (common practice, no source). It is all that is unknown of a measured value. */
export const METER_TOLERANCE = 0.01;

export interface Tolerance {
  /** The value lies within ± this fraction of what the build says. */
  readonly fraction: number;
  /** How far under it may lie, a fraction below 0, where that is another than over it. */
  readonly under?: number;
  /** Whether it is the customary one, because the part names no tolerance of its own. */
  readonly byDefault: boolean;
}

function given(fraction: number | undefined, otherwise: number): Tolerance {
  return { fraction: fraction ?? otherwise, byDefault: fraction === undefined };
}

export function coilTolerance(pickup: Pickup, coil: Coil): Tolerance {
  return given(coil.tolerance ?? pickup.tolerance, DEFAULT_TOLERANCES.coil);
}

/** @param measured ohms of the track where somebody measured it */
export function trackTolerance(pot: Pot, measured: number | undefined): Tolerance {
  return measured === undefined
    ? given(pot.tolerance, DEFAULT_TOLERANCES.pot)
    : { fraction: METER_TOLERANCE, byDefault: false };
}

function capTolerance({ tolerance, dielectric }: PartOf<"cap">): Tolerance {
  if (tolerance !== undefined || dielectric === undefined) return given(tolerance, DEFAULT_TOLERANCES.cap);
  const [low, over] = dielectricOf(dielectric).tolerance;
  return { fraction: over, byDefault: true, ...(low === -over ? {} : { under: low }) };
}

/** A cap that names none has its dielectric's usual one. */
export function valueTolerance(part: PartOf<"cap" | "resistor">): Tolerance {
  return part.kind === "cap" ? capTolerance(part) : given(part.tolerance, DEFAULT_TOLERANCES.resistor);
}
