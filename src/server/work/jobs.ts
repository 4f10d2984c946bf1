import { benchJob } from "../jobs/bench.ts";
import { buildableJob } from "../jobs/buildable.ts";
import { compareJob } from "../jobs/compare.ts";
import { diagnoseJob } from "../jobs/diagnose.ts";
import { dielectricsJob } from "../jobs/dielectrics.ts";
import { examineJob } from "../jobs/examine.ts";
import { fitJob } from "../jobs/fit.ts";
import { readyJob } from "../jobs/health.ts";
import { heardChangeJob } from "../jobs/heard-change.ts";
import { heightsJob } from "../jobs/heights.ts";
import { impulseJob } from "../jobs/impulse.ts";
import { leadsJob } from "../jobs/leads.ts";
import { measureJob } from "../jobs/measure.ts";
import { measuringSignalJob } from "../jobs/measuring-signal.ts";
import { noiseJob } from "../jobs/noise.ts";
import { passportJob, passportPaperJob } from "../jobs/passport.ts";
import { previewJob } from "../jobs/preview.ts";
import { curveTextsJob, previewBatchJob } from "../jobs/previews.ts";
import { recogniseJob } from "../jobs/recognise.ts";
import { responseJob } from "../jobs/response.ts";
import { rewireJob } from "../jobs/rewire.ts";
import { roomJob, roomTemplateJob } from "../jobs/room.ts";
import { searchJob } from "../jobs/search.ts";
import { stringLevelsJob } from "../jobs/string-levels.ts";
import { swapCardJob } from "../jobs/swap-card.ts";
import { switchJob } from "../jobs/switch-finder.ts";
import { tableJob } from "../jobs/table.ts";
import { tapsJob } from "../jobs/taps.ts";
import { toleranceJob } from "../jobs/tolerance.ts";
import { wantedJob } from "../jobs/wanted.ts";
import { wishesJob } from "../jobs/wishes.ts";
import type { WorkSize } from "./fair-queue.ts";

/** Everything a worker can do, by name. */
export const JOBS = {
  ready: readyJob,
  curvesJson: responseJob,
  curveTexts: curveTextsJob,
  preview: previewJob,
  previewBatch: previewBatchJob,
  impulse: impulseJob,
  compare: compareJob,
  dielectrics: dielectricsJob,
  tolerance: toleranceJob,
  table: tableJob,
  fit: fitJob,
  search: searchJob,
  buildable: buildableJob,
  heardChange: heardChangeJob,
  wanted: wantedJob,
  wishes: wishesJob,
  bench: benchJob,
  diagnose: diagnoseJob,
  recognise: recogniseJob,
  rewire: rewireJob,
  noise: noiseJob,
  passport: passportJob,
  swapCard: swapCardJob,
  passportPaper: passportPaperJob,
  room: roomJob,
  roomTemplate: roomTemplateJob,
  leads: leadsJob,
  heights: heightsJob,
  stringLevels: stringLevelsJob,
  switchFinder: switchJob,
  measure: measureJob,
  examine: examineJob,
  taps: tapsJob,
  measuringSignal: measuringSignalJob,
} as const;

export type JobName = keyof typeof JOBS;
export type JobInput<Name extends JobName> = Parameters<(typeof JOBS)[Name]["run"]>[0];
export type JobOutput<Name extends JobName> = Awaited<ReturnType<(typeof JOBS)[Name]["run"]>>;

export function sizeOfJob<Name extends JobName>(name: Name, input: JobInput<Name>): WorkSize {
  return (JOBS[name].size as (input: JobInput<Name>) => WorkSize)(input);
}
