import { type BenchAnswer, type BenchRequest, benchSheet } from "../../bench/bench-sheet.ts";
import { type DiagnoseRequest, type Diagnosis, diagnose } from "../../bench/faults/diagnose.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Checkpoint } from "../../checkpoint.ts";

export interface BenchJob extends BenchRequest {
  readonly build: Build;
}

export interface DiagnoseJob extends DiagnoseRequest {
  readonly build: Build;
}

export function runBench({ build, ...request }: BenchJob): BenchAnswer {
  return benchSheet(build, request);
}

export function runDiagnose({ build, ...request }: DiagnoseJob, { checkpoint }: Checkpoint): Diagnosis {
  return diagnose(build, request, checkpoint);
}
