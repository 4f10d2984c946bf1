import type { Build } from "../../../build-file/schema.ts";
import { Controls, parseSettings, type Settings } from "../../../build-file/settings.ts";
import { Guard } from "../../../choice/guard.ts";
import type { CelsiusRange } from "../../../choice/tolerance/drift.ts";
import { toleranceBands } from "../../../choice/tolerance/tolerance.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import type { ToleranceAnswer, ToleranceBody } from "../../../contract/tolerance.ts";
import { logSpaced } from "../../../response/frequencies.ts";
import type { Job, JobContext } from "../../work/job.ts";

interface ToleranceJob {
  readonly build: Build;
  readonly settings: Settings;
  readonly frequenciesHz: Float64Array;
  readonly draws: number;
  readonly seed: number;
  readonly celsius: CelsiusRange | undefined;
}

function read({ draws, seed, points, temperature, ...body }: ToleranceBody): ToleranceJob {
  const build = readBuildAt("build", body.build);
  const settings = parseSettings(new Controls(build), body.settings);
  return { build, settings, draws, seed, celsius: temperature, frequenciesHz: logSpaced(20, 20_000, points) };
}

const rounded = (values: Float64Array) => Array.from(values, (value) => Math.round(value * 1e6) / 1e6);

function run(
  { build, settings, frequenciesHz, draws, seed, celsius }: ToleranceJob,
  { checkpoint }: JobContext,
): ToleranceAnswer {
  const bands = toleranceBands(new Guard(build), settings, frequenciesHz, { draws, seed, celsius, checkpoint });
  return {
    ...bands,
    frequencies: rounded(bands.frequencies),
    nominal: rounded(bands.nominal),
    low: rounded(bands.low),
    middle: rounded(bands.middle),
    high: rounded(bands.high),
  };
}

export const toleranceJob = { read, run, size: () => "large", gate: "render" } satisfies Job<
  ToleranceJob,
  ToleranceAnswer
>;
