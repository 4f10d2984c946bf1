import type { Build } from "../../../build-file/schema.ts";
import { Controls, type RawSettings, type Settings } from "../../../build-file/settings.ts";
import { expandSweep, type RawSweep } from "../../../build-file/sweep.ts";
import { compare } from "../../../choice/compare/compare.ts";
import type { Through } from "../../../choice/ear/heard-sound.ts";
import { Guard } from "../../../choice/guard.ts";
import { DEFAULT_DRAWS, DEFAULT_SEED } from "../../../choice/tolerance/draws.ts";
import type { CompareAnswer, CompareBody } from "../../../contract/compare.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import { faultAt } from "../../../errors.ts";
import { MAX_DRAWN_CURVES } from "../../../limits.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { pluckedDrive } from "../sound/plucked-drive.ts";
import { driveFor, type Weighting, weightingOf } from "../sound/signal-drive.ts";

interface CompareJob {
  readonly builds: readonly [Build, Build];
  readonly settings: readonly [readonly Settings[], readonly Settings[]];
  readonly weighting: Weighting;
  readonly through: Through;
  readonly tolerance: CompareAnswer["drawn"];
}

function sweepOf(build: Build, sweep: RawSweep | undefined, settings: RawSettings | undefined): Settings[] {
  return expandSweep(new Controls(build), sweep, settings);
}

function buildsOf({ builds, settings }: CompareBody): readonly [Build, Build] {
  const [first, second] = builds.map((build, index) => readBuildAt(`builds.${index}`, build));
  if (second) return [first!, second];
  if (Array.isArray(settings)) return [first!, first!];
  const message = "has one build and one setting; expected two builds, or a list of two settings";
  throw faultAt("REQUEST_INVALID", "builds", message);
}

/** Where nobody says how many guards to draw, a long sweep gets fewer: about a second of work, 200 pairs at least. */
const USUAL_DRAWN_CURVES = 12_000;
const FEWEST_USUAL_DRAWS = 400;

function usualDraws(rows: number): number {
  return Math.max(FEWEST_USUAL_DRAWS, Math.min(DEFAULT_DRAWS, Math.floor(USUAL_DRAWN_CURVES / rows)));
}

function toleranceOf({ tolerance = true }: CompareBody, rows: number): CompareJob["tolerance"] {
  if (tolerance === false) return null;
  const wanted = tolerance === true ? { draws: usualDraws(rows), seed: DEFAULT_SEED } : tolerance;
  if (wanted.draws * rows <= MAX_DRAWN_CURVES) return wanted;
  // A sweep too long even for few guards goes without, unless they were asked for.
  if (tolerance === true) return null;
  const most = Math.floor(MAX_DRAWN_CURVES / wanted.draws);
  const message = `asks for ${wanted.draws} guards in ${rows} settings; expected at most ${most} settings, or false`;
  throw faultAt("LIMIT_EXCEEDED", "tolerance", message);
}

function read(body: CompareBody): CompareJob {
  const builds = buildsOf(body);
  const [first, second] = Array.isArray(body.settings) ? body.settings : [body.settings, body.settings];
  const settings = [sweepOf(builds[0], body.sweep, first), sweepOf(builds[1], body.sweep, second)] as const;
  if (settings[0].length !== settings[1].length) {
    const message = `gives ${settings[0].length} settings of the first build and ${settings[1].length} of the second; name axes both have`;
    throw faultAt("SETTINGS_INVALID", "sweep", message);
  }
  return {
    builds,
    settings,
    weighting: weightingOf(body),
    through: body.through,
    tolerance: toleranceOf(body, settings[0].length),
  };
}

function run(
  { builds, settings, weighting, through, tolerance }: CompareJob,
  { checkpoint }: JobContext,
): CompareAnswer {
  const sides = builds.map((build, index) => {
    checkpoint();
    const guard = new Guard(build);
    const drive = driveFor(guard, weighting, checkpoint);
    const played = weighting.signal === undefined ? pluckedDrive(guard) : drive;
    return { guard, drive, played, settings: settings[index]! };
  });
  const drawing = tolerance && { ...tolerance, checkpoint };
  return { ...compare(sides[0]!, sides[1]!, drawing, through), drawn: tolerance };
}

/** A comparison weighs each of them against noise and tolerance. */
const FEW_SETTINGS = 4;

export const compareJob = {
  read,
  run,
  size: ({ settings }) => (settings[0].length > FEW_SETTINGS ? "large" : "small"),
  gate: "render",
} satisfies Job<CompareJob, CompareAnswer>;
