import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import type { Checkpoint } from "../../checkpoint.ts";
import { type Comparison, compare } from "../../choice/compare/compare.ts";
import { commonDrive, type Drive, driveOfEach, flatDrive } from "../../choice/drive.ts";
import { fitImpedance, type ImpedanceTable, type KnownBeside } from "../../choice/fit/fit-impedance.ts";
import type { Fit } from "../../choice/fit/fit-problem.ts";
import { fitResonances, type ResonanceReading, type ResonanceSetup } from "../../choice/fit/fit-resonances.ts";
import { fitResponse, type KnownLoad, type ResponseTable } from "../../choice/fit/fit-response.ts";
import { Guard } from "../../choice/guard.ts";
import type { FreeSpec } from "../../choice/search/free-parts.ts";
import { type SearchResult, search } from "../../choice/search/search.ts";
import type { Wish } from "../../choice/search/wish.ts";
import { type TableRow, tableOf } from "../../choice/table.ts";
import { type ToleranceBands, toleranceBands } from "../../choice/tolerance/tolerance.ts";
import { feedOf } from "../../render/feed.ts";
import { DEFAULT_SAMPLE_RATE_HZ } from "../../render/signals.ts";

interface Draws {
  readonly draws: number;
  readonly seed: number;
}

export interface CompareJob {
  readonly builds: readonly [Build, Build];
  readonly settings: readonly [readonly Settings[], readonly Settings[]];
  /** A built-in signal; flat where undefined. */
  readonly signal: string | undefined;
  readonly tolerance: Draws | null;
}

export interface ToleranceJob extends Draws {
  readonly build: Build;
  readonly settings: Settings;
  readonly frequenciesHz: Float64Array;
}

export interface TableJob {
  readonly build: Build;
  readonly settings: readonly Settings[];
  readonly signal: string | undefined;
}

/** A wish as plain data: another build in place of a guard. */
export type WishJob =
  | Exclude<Wish, { kind: "like" }>
  | {
      readonly kind: "like";
      readonly settings: Settings;
      readonly target: { readonly build: Build; readonly settings: Settings };
    };

export interface SearchJob {
  readonly build: Build;
  readonly free: readonly FreeSpec[];
  readonly wish: WishJob;
}

export type FitJob =
  | { readonly method: "impedance"; readonly table: ImpedanceTable; readonly known: KnownBeside }
  | { readonly method: "response"; readonly table: ResponseTable; readonly known: KnownLoad }
  | { readonly method: "resonances"; readonly readings: readonly ResonanceReading[]; readonly setup: ResonanceSetup };

/** What drives a guard's coils: a built-in signal played on its strings, or every band alike. */
export function driveFor(guard: Guard, signal: string | undefined, checkpoint?: () => void): Drive {
  if (signal === undefined) return flatDrive();
  const source = { name: signal, sampleRateHz: DEFAULT_SAMPLE_RATE_HZ };
  const { drive, coils, sampleRateHz } = feedOf(guard.build, guard.sources, source, undefined, checkpoint);
  const [common] = drive;
  return common ? commonDrive(signal, common, sampleRateHz) : driveOfEach(signal, coils, sampleRateHz);
}

export function runCompare(
  { builds, settings, signal, tolerance }: CompareJob,
  { checkpoint }: Checkpoint,
): Comparison {
  const sides = builds.map((build, index) => {
    checkpoint();
    const guard = new Guard(build);
    return { guard, drive: driveFor(guard, signal, checkpoint), settings: settings[index]! };
  });
  return compare(sides[0]!, sides[1]!, tolerance && { ...tolerance, checkpoint });
}

export function runTolerance(job: ToleranceJob, { checkpoint }: Checkpoint): ToleranceBands {
  const { build, settings, frequenciesHz, draws, seed } = job;
  return toleranceBands(new Guard(build), settings, frequenciesHz, { draws, seed, checkpoint });
}

export function runTable({ build, settings, signal }: TableJob, { checkpoint }: Checkpoint): TableRow[] {
  const guard = new Guard(build);
  return tableOf(guard, settings, driveFor(guard, signal, checkpoint), checkpoint);
}

export function runFit(job: FitJob, { checkpoint }: Checkpoint): Fit {
  switch (job.method) {
    case "impedance":
      return fitImpedance(job.table, { ...job.known, checkpoint });
    case "response":
      return fitResponse(job.table, { ...job.known, checkpoint });
    case "resonances":
      return fitResonances(job.readings, { ...job.setup, checkpoint });
  }
}

export function runSearch({ build, free, wish }: SearchJob, { checkpoint }: Checkpoint): SearchResult {
  const wished: Wish =
    wish.kind === "like"
      ? { ...wish, target: { guard: new Guard(wish.target.build), settings: wish.target.settings } }
      : wish;
  return search(build, free, wished, { checkpoint });
}
