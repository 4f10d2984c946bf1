import { hasCoilLeads } from "./lug-names.ts";
import type { Pickup } from "./schema.ts";
import type { WireMeans } from "./wire-means.ts";

/**
 * What brings a pickup's metal to ground. A cable of four leads has a bare drain wire in it, soldered to the metal by the
 * maker, so that nothing is cut; all else takes a braid. Common practice, no source.
 */
export function meansOfShield(
  pickup: { readonly coils: object } & Pick<Partial<Pickup>, "conductors" | "metal">,
): WireMeans {
  return hasCoilLeads(pickup) && pickup.metal !== "braid" ? "lead" : "braid";
}
