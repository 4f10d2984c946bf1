import { hasPlan } from "../../build-file/expand.ts";
import type { PlanInput } from "../../build-file/plans/plan-schema.ts";
import { recognise } from "../../build-file/recognise/recognise.ts";
import type { BuildInput } from "../../build-file/schema.ts";
import type { RecogniseAnswer, RecogniseBody } from "../../contract/recognise.ts";
import { readBuildAt } from "../../contract/refusal.ts";
import type { Job } from "../work/job.ts";

interface RecogniseJob {
  /** As it was written, in either form, and known to be readable. */
  readonly build: BuildInput | { readonly plan: PlanInput };
}

export const recogniseJob = {
  read: ({ build }: RecogniseBody): RecogniseJob => {
    readBuildAt("build", build);
    return { build: build as RecogniseJob["build"] };
  },
  run: ({ build }: RecogniseJob): RecogniseAnswer => {
    if (hasPlan(build)) return { plan: build.plan, edits: [] };
    const found = recognise(build);
    return found.plan === null ? found : { plan: found.plan, edits: found.edits };
  },
  size: () => "small",
  gate: "render",
} satisfies Job<RecogniseJob, RecogniseAnswer>;
