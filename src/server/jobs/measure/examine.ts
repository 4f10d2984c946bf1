import { partsOfKind } from "../../../build-file/parts-of-kind.ts";
import type { Build } from "../../../build-file/schema.ts";
import { Controls, parseSettings } from "../../../build-file/settings.ts";
import type { ExamineAnswer, ExaminedAnswer } from "../../../contract/examine/examine-answer.ts";
import { type ExamineBody, GAIN_FILE } from "../../../contract/examine/examine-request.ts";
import { TAPS_FILE } from "../../../contract/measure/taps.ts";
import { readBuildAt } from "../../../contract/refusal.ts";
import { type InputFault, refused } from "../../../errors.ts";
import { examine } from "../../../examine/examine.ts";
import { planNotes, planOf } from "../../../examine/plan/plan.ts";
import { EXAMINE_CAUTIONS, NEEDS, plannedTake } from "../../../examine/plan/planned-words.ts";
import { type Order, readExciterTake, readGain, readJackTake } from "../../../examine/takes/read-take.ts";
import type { Placement, Take } from "../../../examine/takes/take.ts";
import type { Uncertain } from "../../../measure/impedance/uncertain.ts";
import type { Reading } from "../../../measure/recording/read-recording.ts";
import type { Job, JobContext } from "../../work/job.ts";
import { rigOf } from "./examine-rig.ts";
import { recordedAs, recordingFigures, requireMeasurable } from "./measure-files.ts";
import { tapInputOf, tapsHeard } from "./tap-file.ts";

type Files = Readonly<Record<string, Uint8Array>>;

interface ExamineJob {
  readonly body: Omit<ExamineBody, "build">;
  readonly build: Build;
  readonly files: Files;
}

/** Every file has a take and every take its file; takes have a rig. */
function requireTakes({ takes, rig, taps }: ExamineBody, files: Files): void {
  const named = takes.map(({ file }) => file);
  const faults: InputFault[] = [
    ...takes.flatMap(({ file }, index) => {
      if (!files[file]) return [{ path: file, message: "is missing; expected a WAV file" }];
      const earlier = named.indexOf(file);
      const again = `is the file of takes.${earlier} too; expected a file of its own`;
      return earlier < index ? [{ path: `takes.${index}.file`, message: again }] : [];
    }),
    ...Object.keys(files)
      .filter((file) => file !== GAIN_FILE && file !== TAPS_FILE && !named.includes(file))
      .map((file) => ({ path: file, message: "belongs to no take; expected a take that names it" })),
    ...(taps && takes.length === 0
      ? [{ path: "taps", message: "has no takes beside it; taps alone go to /api/taps" }]
      : []),
    ...(taps && !files[TAPS_FILE] ? [{ path: TAPS_FILE, message: "is missing; expected a WAV file" }] : []),
    ...(!taps && files[TAPS_FILE] ? [{ path: "taps", message: "is missing; expected how the file was tapped" }] : []),
    ...(takes.length > 0 && !rig ? [{ path: "rig", message: "is missing; expected it where there are takes" }] : []),
  ];
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
}

function read(body: ExamineBody, files: Files = {}): ExamineJob {
  requireTakes(body, files);
  requireMeasurable(files);
  return { body, build: readBuildAt("build", body.build), files };
}

/** @throws REQUEST_INVALID naming the field, where the guard has no such coil */
function placementOf(
  build: Build,
  { pickup, coil }: { pickup: string; coil?: string | undefined },
  path: string,
): Placement {
  const part = build.parts[pickup];
  if (part?.kind !== "pickup") {
    const pickups = partsOfKind(build, "pickup").map(([name]) => name);
    const message = `"${pickup}" is no pickup; expected one of ${pickups.join(", ")}`;
    throw refused("REQUEST_INVALID", [{ path: `${path}.pickup`, message }]);
  }
  const coils = Object.keys(part.coils);
  if (coil !== undefined && coils.includes(coil)) return { pickup, coil };
  if (coil === undefined && coils.length === 1) return { pickup, coil: coils[0]! };
  const found = coil === undefined ? "is missing" : `"${coil}" is none of its coils`;
  throw refused("REQUEST_INVALID", [
    { path: `${path}.coil`, message: `${found}; expected one of ${coils.join(", ")}` },
  ]);
}

const ORDERS: Readonly<Record<string, Order>> = { "before-behind": [0, 1], "behind-before": [1, 0] };

function takesOf({ body, build, files }: ExamineJob, context: JobContext) {
  const order = ORDERS[body.rig!.channels]!;
  const controls = new Controls(build);
  const recordings: ExaminedAnswer["recordings"][number][] = [];
  const tell = (file: string, readings: readonly Reading[]) =>
    recordings.push({ file, ...recordingFigures(...readings) });
  const planned = body.takes.map(({ settings, through, file, label }, index) => ({
    file,
    label,
    settings: parseSettings(controls, settings, `takes.${index}.settings`),
    through: through === "jack" ? ("jack" as const) : placementOf(build, through, `takes.${index}.through`),
  }));
  let gain: readonly Uncertain[] | undefined;
  if (files[GAIN_FILE]) {
    const read = readGain(body.signal, recordedAs(GAIN_FILE, files, 2), order);
    gain = read.gain;
    tell(GAIN_FILE, read.readings);
  }
  const takes = planned.map(({ file, label, settings, through }): Take => {
    context.checkpoint();
    const recorded = recordedAs(file, files, 1);
    const made =
      through === "jack"
        ? readJackTake(body.signal, recorded, order, settings, gain)
        : readExciterTake(body.signal, recorded, order, settings, through);
    tell(file, made.readings);
    return { ...made.take, label };
  });
  return { takes, recordings, isGainKnown: gain !== undefined };
}

function run(job: ExamineJob, context: JobContext): ExamineAnswer {
  const { body, build } = job;
  if (body.takes.length === 0) {
    const plan = planOf(build, context);
    const takes = plan.takes.map((each) => plannedTake(build, each));
    return { kind: "plan", takes, needs: [...NEEDS], notes: planNotes(plan), cautions: [...EXAMINE_CAUTIONS] };
  }
  const { takes, recordings, isGainKnown } = takesOf(job, context);
  const { readings, joints, temperature, meter } = body;
  const taps = body.taps && {
    heard: tapsHeard(build, body.taps, job.files[TAPS_FILE]!, "taps.timing", context),
    input: tapInputOf(body.taps),
  };
  const question = { rig: rigOf(body.rig!, isGainKnown), takes, taps, readings, joints, temperature, meter };
  const examined = examine(build, question, context);
  return {
    ...examined,
    takes: examined.takes.map((take, index) => ({ file: body.takes[index]!.file, ...take })),
    recordings,
  };
}

export const examineJob = {
  read,
  run,
  size: () => "large",
  gate: "set",
} satisfies Job<ExamineJob, ExamineAnswer>;
