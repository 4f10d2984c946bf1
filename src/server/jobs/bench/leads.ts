import { answerLeads, type GuardRequest } from "../../../bench/leads/answer-leads.ts";
import type { LeadsRequest } from "../../../bench/leads/leads-request.ts";
import { expandBuild } from "../../../build-file/expand.ts";
import type { LeadsAnswer, LeadsBody } from "../../../contract/bench/leads.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { Job, JobContext } from "../../work/job.ts";

interface LeadsJob {
  readonly request: LeadsRequest;
  readonly guard: GuardRequest | undefined;
}

function readLeads({ build, place, reference, ...request }: LeadsBody): LeadsJob {
  if (build === undefined || place === undefined) return { request, guard: undefined };
  return { request, guard: { build: readBuildAt("build", build), source: expandBuild(build), place, reference } };
}

export const leadsJob = {
  read: readLeads,
  run: ({ request, guard }: LeadsJob, context: JobContext): LeadsAnswer => answerLeads(request, guard, context),
  size: () => "small",
  gate: "render",
} satisfies Job<LeadsJob, LeadsAnswer>;
