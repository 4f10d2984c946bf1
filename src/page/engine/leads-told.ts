import { pickupPlaces } from "../../bench/harness/pickup-places.ts";
import { findLeads, tellLeads } from "../../bench/leads/find-leads.ts";
import type { LeadsRequest } from "../../bench/leads/leads-request.ts";
import { NO_CHECKPOINT } from "../../checkpoint.ts";
import type { LeadsAnswer } from "../../contract/bench/leads.ts";
import type { BuildSource } from "../state/reading.ts";

/** Where the pickup is to go. */
export interface GuardAsked {
  readonly source: BuildSource;
  readonly place: string;
  readonly reference?: { readonly pickup: string; readonly kick: "up" | "down" } | undefined;
}

export interface LeadsAsked {
  readonly request: LeadsRequest;
  readonly guard: GuardAsked | undefined;
}

/** What the service answers, worked out in the browser. */
export interface LeadsTold extends Omit<LeadsAnswer, "guard"> {
  readonly guard: BuildSource | null;
}

export const freePlaces = pickupPlaces;

export function leadsTold(request: LeadsRequest): LeadsTold {
  return { ...tellLeads(findLeads(request, 1, NO_CHECKPOINT)), withGuard: null, guard: null };
}
