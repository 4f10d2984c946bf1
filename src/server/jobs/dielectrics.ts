import { dielectricsAsked } from "../../bench/dielectrics/asked.ts";
import { type DielectricsAsked, dielectricsTold } from "../../bench/dielectrics/dielectrics.ts";
import { Guard } from "../../choice/guard.ts";
import type { DielectricsAnswer, DielectricsBody } from "../../contract/dielectrics.ts";
import { readBuildAt } from "../../contract/refusal.ts";
import type { Job, JobContext } from "../work/job.ts";
import { driveFor } from "./signal-drive.ts";

interface DielectricsJob extends DielectricsAsked {
  /** A built-in signal; flat where undefined. */
  readonly signal: string | undefined;
}

function read({ build, caps, settings, signal }: DielectricsBody): DielectricsJob {
  return { ...dielectricsAsked(readBuildAt("build", build), caps, settings), signal };
}

function run({ signal, ...asked }: DielectricsJob, { checkpoint }: JobContext): DielectricsAnswer {
  return dielectricsTold(asked, driveFor(new Guard(asked.build), signal, checkpoint), checkpoint);
}

export const dielectricsJob = { read, run, size: () => "large", gate: "render" } satisfies Job<
  DielectricsJob,
  DielectricsAnswer
>;
