import { pickupType } from "../../catalogue/pickup-types.ts";
import { hasCoilLeads } from "../../lug-names.ts";
import type { PlanPickup } from "../plan-schema.ts";

export function typeOf(pickup: PlanPickup): string | undefined {
  return typeof pickup === "string" ? pickup : pickup.type;
}

/** Whether a pickup has two coils with leads of their own, which splits and series switches need. */
export function hasFourLeads(pickup: PlanPickup): boolean {
  if (typeof pickup !== "string" && "kind" in pickup) return hasCoilLeads(pickup);
  const type = pickupType(typeOf(pickup) ?? "");
  if (!type) return false;
  const conductors = typeof pickup === "string" ? type.conductors : (pickup.conductors ?? type.conductors);
  return hasCoilLeads({ coils: type.coils, conductors });
}
