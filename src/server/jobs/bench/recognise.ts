import { hasPlan } from "../../../build-file/expand.ts";
import { PlanForm } from "../../../build-file/plans/choices/plan-form.ts";
import type { PlanInput } from "../../../build-file/plans/plan-schema.ts";
import { recognise } from "../../../build-file/recognise/recognise.ts";
import type { BuildInput } from "../../../build-file/schema.ts";
import type { RecogniseAnswer, RecogniseBody } from "../../../contract/recognise.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { Job } from "../../work/job.ts";

interface RecogniseJob {
  /** As it was written, in either form, and known to be readable. */
  readonly build: BuildInput | { readonly plan: PlanInput };
}

const optionsOf = (plan: PlanInput) => new PlanForm(plan).fields();

export const recogniseJob = {
  read: ({ build }: RecogniseBody): RecogniseJob => {
    readBuildAt("build", build);
    return { build: build as RecogniseJob["build"] };
  },
  run: ({ build }: RecogniseJob): RecogniseAnswer => {
    if (hasPlan(build)) return { plan: build.plan, edits: [], options: optionsOf(build.plan) };
    const found = recognise(build);
    if (found.plan === null) return found;
    return { plan: found.plan, edits: found.edits, options: optionsOf(found.plan) };
  },
  size: () => "small",
  gate: "render",
} satisfies Job<RecogniseJob, RecogniseAnswer>;
