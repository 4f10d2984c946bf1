import { CAUTIONS } from "../../../bench/sheet/cautions.ts";
import type { Build } from "../../../build-file/schema.ts";
import { Controls, rawSettings } from "../../../build-file/settings.ts";
import { TAPS_FILE, type TappedAnswer, type TapsAnswer, type TapsBody } from "../../../contract/measure/taps.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import { faultAt } from "../../../errors.ts";
import { howToTap, leftOutWords, TAP_CAUTIONS, wordedSteps } from "../../../measure/taps/how-to-tap.ts";
import { STEP_SECONDS, tapPlan } from "../../../measure/taps/plan-taps.ts";
import { type TapMap, tapMap } from "../../../measure/taps/tap-map.ts";
import { tapVerdict } from "../../../measure/taps/tap-verdict.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { tapInputOf, tapsHeard } from "./tap-file.ts";

interface TapsJob {
  readonly build: Build;
  readonly body: Omit<TapsBody, "build">;
  readonly file: Uint8Array | undefined;
}

function read(body: TapsBody, files: Readonly<Record<string, Uint8Array>> = {}): TapsJob {
  const build = readBuildAt("build", body.build);
  if (!Object.values(build.parts).some(({ kind }) => kind === "pickup"))
    throw faultAt("REQUEST_INVALID", "build", "has no pickup; expected one whose poles can be tapped");
  return { body, build, file: files[TAPS_FILE] };
}

const rowOf = (
  controls: Controls,
  { settings, position, pickup, coil, row }: ReturnType<typeof wordedSteps>[number],
) => ({
  settings: rawSettings(controls, settings),
  position,
  pickup,
  coil,
  row,
});

function notesOn({ cells }: TapMap, leftOut: number): string[] {
  const clipped = cells.filter(({ heard }) => heard.isClipped).length;
  const unclear = cells.filter(({ sounds }) => sounds === undefined).length;
  return [
    ...(clipped > 0
      ? [`${clipped} steps clipped the input: their levels are at least what is said. Turn the gain down.`]
      : []),
    ...(unclear > 0 ? [`${unclear} steps lie between sounding and leaking in: tap them again, all alike.`] : []),
    ...leftOutWords(leftOut),
    "Which of all pickups is the one that is turned about no tap can say: only which swing against which.",
  ];
}

function tapped(build: Build, map: TapMap, leftOut: number): TappedAnswer {
  const controls = new Controls(build);
  const words = wordedSteps(
    build,
    map.cells.map(({ heard }) => heard.step),
  );
  return {
    kind: "tapped",
    ...tapVerdict(build, map),
    departures: map.departures.map(({ kind, message, settings, pickup, coil }) => ({
      kind,
      message,
      settings: settings ? rawSettings(controls, settings) : null,
      pickup: pickup ?? null,
      coil: coil ?? null,
    })),
    cells: map.cells.map(({ heard, isExpected, sounds, chance, agrees }, i) => ({
      ...rowOf(controls, words[i]!),
      between: heard.between ? [...heard.between] : null,
      swings: heard.swings,
      level: heard.level ?? null,
      floor: heard.floor,
      clipped: heard.isClipped,
      expected: isExpected,
      sounds: sounds ?? null,
      chance,
      inPhase: agrees ?? null,
    })),
    notes: notesOn(map, leftOut),
    cautions: [...TAP_CAUTIONS, ...CAUTIONS],
  };
}

function run({ build, body, file }: TapsJob, context: JobContext): TapsAnswer {
  const input = tapInputOf(body);
  const plan = tapPlan(build, input, context);
  const { steps, leftOut } = plan;
  const controls = new Controls(build);
  if (!file) {
    return {
      kind: "plan",
      how: howToTap(steps, leftOut),
      cautions: [...TAP_CAUTIONS, ...CAUTIONS],
      steps: wordedSteps(build, steps).map((step) => ({ ...rowOf(controls, step), at: step.at })),
      seconds: steps.at(-1)!.at + STEP_SECONDS,
    };
  }
  return tapped(build, tapMap(build, tapsHeard(build, body, file, "timing", context, plan), input), leftOut);
}

export const tapsJob = { read, run, size: () => "large", gate: "set" } satisfies Job<TapsJob, TapsAnswer>;
