import { type ImpulseRequest, renderImpulse } from "../../render/impulse.ts";
import { type PreviewRequest, renderPreview } from "../../render/preview.ts";
import { renderBatch, type SetRequest } from "../../render/preview-set.ts";
import type { CurvesRequest } from "../../response/curve-reader.ts";
import { curvesJson, curveTexts } from "../archive/curve-texts.ts";
import { type BenchJob, type DiagnoseJob, runBench, runDiagnose } from "./bench-jobs.ts";
import {
  type CompareJob,
  type FitJob,
  runCompare,
  runFit,
  runSearch,
  runTable,
  runTolerance,
  type SearchJob,
  type TableJob,
  type ToleranceJob,
} from "./choice-jobs.ts";

/** What a job may use of its surroundings. */
export interface JobContext {
  /** To be called now and then; throws where nobody waits for the answer any more. */
  checkpoint(): void;
}

/**
 * Everything a worker can do, by name. A job is a pure function of its input; input and answer are plain data (structured
 * clone), and the answer's typed arrays change hands without a copy, so they must not be kept.
 */
export const JOBS = {
  ready: (_nothing: null) => true,
  curvesJson: (request: CurvesRequest, context: JobContext) => curvesJson(request, context),
  curveTexts: (request: CurvesRequest, context: JobContext) => curveTexts(request, context),
  preview: (request: PreviewRequest, context: JobContext) => renderPreview(request, context),
  previewBatch: (request: SetRequest, context: JobContext) => renderBatch(request, context),
  impulse: (request: ImpulseRequest) => renderImpulse(request),
  compare: (request: CompareJob, context: JobContext) => runCompare(request, context),
  tolerance: (request: ToleranceJob, context: JobContext) => runTolerance(request, context),
  table: (request: TableJob, context: JobContext) => runTable(request, context),
  fit: (request: FitJob, context: JobContext) => runFit(request, context),
  search: (request: SearchJob, context: JobContext) => runSearch(request, context),
  bench: (request: BenchJob) => runBench(request),
  diagnose: (request: DiagnoseJob, context: JobContext) => runDiagnose(request, context),
} as const;

export type JobName = keyof typeof JOBS;
export type JobInput<Name extends JobName> = Parameters<(typeof JOBS)[Name]>[0];
export type JobOutput<Name extends JobName> = ReturnType<(typeof JOBS)[Name]>;
