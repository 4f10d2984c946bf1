import { diagnose } from "../../../bench/faults/diagnose.ts";
import type { DiagnoseRequest } from "../../../bench/faults/diagnose-request.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { DiagnoseAnswer, DiagnoseBody } from "../../../contract/diagnose.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { Job, JobContext } from "../../work/job.ts";

interface DiagnoseJob extends DiagnoseRequest {
  readonly build: Build;
}

export const diagnoseJob = {
  read: (body: DiagnoseBody): DiagnoseJob => ({ ...body, build: readBuildAt("build", body.build) }),
  run: ({ build, ...request }: DiagnoseJob, { checkpoint }: JobContext): DiagnoseAnswer =>
    diagnose(build, request, checkpoint),
  size: () => "large",
  gate: "render",
} satisfies Job<DiagnoseJob, DiagnoseAnswer>;
