import "./zod-without-eval.ts";
import { answerLeads } from "../../bench/leads/answer-leads.ts";
import type { LeadsRequest } from "../../bench/leads/leads-request.ts";
import { expandBuild } from "../../build-file/expand.ts";
import { readBuild } from "../../build-file/read-build.ts";
import { NO_CHECKPOINT } from "../../checkpoint.ts";
import type { BuildSource } from "../state/reading.ts";
import type { GuardAsked, LeadsTold } from "./leads-told.ts";

/** A pickup on its way into a guard. The guard is read anew, since the one that comes of it must be readable too. */
export function leadsInGuardTold(request: LeadsRequest, { source, ...rest }: GuardAsked): LeadsTold {
  const guard = { ...rest, build: readBuild(source), source: expandBuild(source) };
  const answer = answerLeads(request, guard, NO_CHECKPOINT);
  return { ...answer, guard: answer.guard as BuildSource | null };
}
