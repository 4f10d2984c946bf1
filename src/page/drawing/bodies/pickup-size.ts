import type { PartOf } from "../../../build-file/schema.ts";

/** Drawing units: a pickup's coils are drawn to its height, its leads spread wide for their names. */
export const PICKUP = { coilWidth: 46, coilGap: 84, coilHeight: 140, leadGap: 48 } as const;

/** Where the coils of a pickup lie within it. */
export function coilCentres(pickup: PartOf<"pickup">): { coil: string; x: number }[] {
  const coils = Object.keys(pickup.coils);
  return coils.map((coil, index) => ({ coil, x: (index - (coils.length - 1) / 2) * PICKUP.coilGap }));
}
