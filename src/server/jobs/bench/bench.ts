import { type BenchRequest, benchSheet } from "../../../bench/bench-sheet.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { BenchAnswer, BenchBody } from "../../../contract/bench/bench.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { Job } from "../../work/job.ts";

interface BenchJob extends BenchRequest {
  readonly build: Build;
}

export const benchJob = {
  read: (body: BenchBody): BenchJob => ({ ...body, build: readBuildAt("build", body.build) }),
  run: ({ build, ...request }: BenchJob): BenchAnswer => benchSheet(build, request),
  size: () => "small",
  gate: "render",
} satisfies Job<BenchJob, BenchAnswer>;
