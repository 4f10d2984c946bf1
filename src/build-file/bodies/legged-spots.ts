import { hasCoilLeads, localCoilLeads } from "../lug-names.ts";
import type { Pickup } from "../schema.ts";
import { inRow, mm, type Spots } from "./spot.ts";

const COILS_APART = mm(18);
const LEAD_PITCH = mm(5);
/** Leads leave a pickup at the treble end of its base. */
const LEAD_END = mm(35);

/** Where the coils of a pickup lie along x, in metres. */
export function coilMiddles(pickup: Pickup): { readonly coil: string; readonly x: number }[] {
  const coils = Object.keys(pickup.coils);
  return coils.map((coil, index) => ({ coil, x: (index - (coils.length - 1) / 2) * COILS_APART }));
}

export function pickupSpots(pickup: Pickup): Spots {
  const leads = hasCoilLeads(pickup)
    ? coilMiddles(pickup).flatMap(({ coil, x }) => inRow(localCoilLeads(coil), LEAD_PITCH, { x, y: LEAD_END }))
    : inRow(["hot", "ground"], LEAD_PITCH, { x: 0, y: LEAD_END });
  const right = Math.max(...leads.map(([, { x }]) => x));
  return new Map([...leads, ["shield", { x: right + LEAD_PITCH, y: LEAD_END }]]);
}

/** From one end of a cap or resistor to the other, where its legs are bent. */
const LEGS = mm(12);

export const TWO_LEGS: Spots = new Map(inRow(["a", "b"], LEGS));
export const ONE_LUG: Spots = new Map([["", { x: 0, y: 0 }]]);
