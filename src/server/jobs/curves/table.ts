import type { Build } from "../../../build-file/schema.ts";
import { Controls, type Settings } from "../../../build-file/settings.ts";
import { expandSweep } from "../../../build-file/sweep.ts";
import { Guard } from "../../../choice/guard.ts";
import { tableOf } from "../../../choice/table.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { TableAnswer, TableBody } from "../../../contract/table.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { driveFor, type Weighting, weightingOf } from "../sound/signal-drive.ts";

interface TableJob {
  readonly build: Build;
  readonly settings: readonly Settings[];
  readonly weighting: Weighting;
}

function read({ sweep, settings, ...body }: TableBody): TableJob {
  const build = readBuildAt("build", body.build);
  return { build, settings: expandSweep(new Controls(build), sweep, settings), weighting: weightingOf(body) };
}

function run({ build, settings, weighting }: TableJob, { checkpoint }: JobContext): TableAnswer {
  const guard = new Guard(build);
  const rows = tableOf(guard, settings, driveFor(guard, weighting, checkpoint), checkpoint);
  return { weighting: weighting.signal ?? "flat", rows };
}

export const tableJob = { read, run, size: () => "large", gate: "render" } satisfies Job<TableJob, TableAnswer>;
