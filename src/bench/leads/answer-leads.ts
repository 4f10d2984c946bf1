import type { Checkpoint } from "../../checkpoint.ts";
import { findLeads, tellLeads } from "./find-leads.ts";
import { type GuardPlace, leadsInGuard } from "./in-guard.ts";
import { type KickReference, kickSense } from "./kick-sense.ts";
import type { LeadsRequest } from "./leads-request.ts";

export interface GuardRequest extends GuardPlace {
  readonly reference?: KickReference | undefined;
}

/**
 * What a pickup is, and where a guard is given, how it goes into it.
 * @throws PresolderError REQUEST_INVALID, naming the field
 */
export function answerLeads(request: LeadsRequest, guard: GuardRequest | undefined, checkpoint: Checkpoint) {
  const sense = guard?.reference ? kickSense(guard.build, guard.reference) : 1;
  const found = findLeads(request, sense, checkpoint);
  const inGuard = guard ? leadsInGuard(found, guard) : { withGuard: null, guard: null };
  return { ...tellLeads(found), ...inGuard };
}
