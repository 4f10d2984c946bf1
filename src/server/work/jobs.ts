import { benchJob } from "../jobs/bench/bench.ts";
import { diagnoseJob } from "../jobs/bench/diagnose.ts";
import { heightsJob } from "../jobs/bench/heights.ts";
import { leadsJob } from "../jobs/bench/leads.ts";
import { passportJob, passportPaperJob } from "../jobs/bench/passport.ts";
import { recogniseJob } from "../jobs/bench/recognise.ts";
import { rewireJob } from "../jobs/bench/rewire.ts";
import { roomJob, roomTemplateJob } from "../jobs/bench/room.ts";
import { stringLevelsJob } from "../jobs/bench/string-levels.ts";
import { swapCardJob } from "../jobs/bench/swap-card.ts";
import { switchJob } from "../jobs/bench/switch-finder.ts";
import { buildableJob } from "../jobs/choice/buildable.ts";
import { compareJob } from "../jobs/choice/compare.ts";
import { dielectricsJob } from "../jobs/choice/dielectrics.ts";
import { fitJob } from "../jobs/choice/fit.ts";
import { heardChangeJob } from "../jobs/choice/heard-change.ts";
import { searchJob } from "../jobs/choice/search.ts";
import { toleranceJob } from "../jobs/choice/tolerance.ts";
import { wantedJob } from "../jobs/choice/wanted.ts";
import { wishesJob } from "../jobs/choice/wishes.ts";
import { responseJob } from "../jobs/curves/response.ts";
import { tableJob } from "../jobs/curves/table.ts";
import { readyJob } from "../jobs/health/health.ts";
import { examineJob } from "../jobs/measure/examine.ts";
import { measureJob } from "../jobs/measure/measure.ts";
import { measuringSignalJob } from "../jobs/measure/measuring-signal.ts";
import { tapsJob } from "../jobs/measure/taps.ts";
import { impulseJob } from "../jobs/sound/impulse.ts";
import { noiseJob } from "../jobs/sound/noise.ts";
import { previewJob } from "../jobs/sound/preview.ts";
import { curveTextsJob, previewBatchJob } from "../jobs/sound/previews.ts";
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
