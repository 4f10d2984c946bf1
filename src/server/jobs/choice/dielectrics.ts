import { dielectricsAsked } from "../../../bench/dielectrics/asked.ts";
import { type DielectricsAsked, dielectricsTold } from "../../../bench/dielectrics/dielectrics.ts";
import { Guard } from "../../../choice/guard.ts";
import type { DielectricsAnswer, DielectricsBody } from "../../../contract/dielectrics.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { driveFor, type Weighting, weightingOf } from "../sound/signal-drive.ts";

interface DielectricsJob extends DielectricsAsked {
  readonly weighting: Weighting;
}

function read(body: DielectricsBody): DielectricsJob {
  const { build, caps, settings } = body;
  return { ...dielectricsAsked(readBuildAt("build", build), caps, settings), weighting: weightingOf(body) };
}

function run({ weighting, ...asked }: DielectricsJob, { checkpoint }: JobContext): DielectricsAnswer {
  return dielectricsTold(asked, driveFor(new Guard(asked.build), weighting, checkpoint), checkpoint);
}

export const dielectricsJob = { read, run, size: () => "large", gate: "render" } satisfies Job<
  DielectricsJob,
  DielectricsAnswer
>;
