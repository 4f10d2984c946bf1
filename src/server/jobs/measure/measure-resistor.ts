import { runFit } from "../../../choice/fit/fit-job.ts";
import type { FittedAnswer } from "../../../contract/fit.ts";
import type { MeasureAnswer, MeasureBody, RecordingName } from "../../../contract/measure/measure.ts";
import { faultAt } from "../../../errors.ts";
import type { Ratios, Rig } from "../../../measure/impedance/series-resistor.ts";
import {
  impedanceBehind,
  type Point,
  ratiosOf,
  requireOrder,
  tableOf,
} from "../../../measure/methods/behind-resistor.ts";
import { requireOpenAbove } from "../../../measure/methods/open-run.ts";
import { requirePart } from "../../../measure/methods/part-kind.ts";
import { capacitorOf, resistorOf } from "../../../measure/methods/part-values.ts";
import {
  capacitanceBehindUnknown,
  coilBehindUnknown,
  inputImpedance,
  lossBehindUnknown,
  resistanceBehindUnknown,
  STATED_INPUT_NOTE,
  unknownInputNotes,
} from "../../../measure/methods/unknown-input.ts";
import { readBoth } from "../../../measure/recording/channels.ts";
import type { JobContext } from "../../work/job.ts";
import { across, knownOf } from "../choice/fit.ts";
import { fittedAnswerOf } from "../choice/fit-answer.ts";

import { type Files, recordedAs, recordingTold, requireFiles } from "./measure-files.ts";

type ResistorBody = Extract<MeasureBody, { method: "series-resistor" }>;
type ResistorAnswer = Extract<MeasureAnswer, { method: "series-resistor" }>;
type Told = Pick<ResistorAnswer, "fit" | "capacitance" | "lossFactor" | "resistance">;

/** @throws REQUEST_INVALID for a file that is missing or of no use, or an input that is stated and recorded, or stated as nothing */
export function requireBehindResistor({ input }: ResistorBody, files: Files): void {
  requireFiles(files, ["measured"], ["gain", "open", "short"]);
  if (!input) return;
  if (files.open)
    throw faultAt(
      "REQUEST_INVALID",
      "input",
      "is given beside the recording `open`, which measures it; expected one of the two",
    );
  if (input.resistance === undefined && input.capacitance === 0)
    throw faultAt("REQUEST_INVALID", "input", "is no load; expected a resistance, a capacitance or both");
}

function coilOf(
  body: ResistorBody,
  points: readonly Point[],
  isInputKnown: boolean,
  context: JobContext,
): FittedAnswer {
  const job = { method: "impedance", table: tableOf(points), known: knownOf(body) } as const;
  const fit = fittedAnswerOf(job, runFit(job, context));
  return isInputKnown ? fit : { ...fit, values: coilBehindUnknown(fit.values) };
}

function capacitanceOf(points: readonly Point[], isInputKnown: boolean): Told {
  const { capacitance, lossFactor } = capacitorOf(points);
  if (!capacitance) return {};
  if (isInputKnown) return { capacitance, ...(lossFactor && { lossFactor }) };
  return {
    capacitance: capacitanceBehindUnknown(capacitance),
    ...(lossFactor && { lossFactor: lossBehindUnknown(lossFactor, capacitance.value) }),
  };
}

function partOf(body: ResistorBody, points: readonly Point[], isInputKnown: boolean, context: JobContext): Told {
  switch (body.part) {
    case "coil":
      return { fit: coilOf(body, points, isInputKnown, context) };
    case "resistor": {
      const { resistance } = resistorOf(points);
      if (!resistance) return {};
      return { resistance: isInputKnown ? resistance : resistanceBehindUnknown(resistance) };
    }
    case "capacitor":
    case "lead":
      return capacitanceOf(points, isInputKnown);
  }
}

/** @throws DATA_INSUFFICIENT where the part named is not what was measured */
function requireTold(part: string, told: object): void {
  if (Object.keys(told).length > 0) return;
  const message = `what was measured is no ${part}: its current does not lead the voltage; say which part it is`;
  throw faultAt("DATA_INSUFFICIENT", "part", message);
}

function notesOf({ input, part }: ResistorBody, isOpenRecorded: boolean, points: readonly Point[]): string[] {
  if (isOpenRecorded) return [];
  return input ? [STATED_INPUT_NOTE] : unknownInputNotes(part, points);
}

/** A part behind a known resistor, from recordings before and behind it. */
export function behindResistor(body: ResistorBody, files: Files, context: JobContext): ResistorAnswer {
  const recordings: ResistorAnswer["recordings"][number][] = [];
  const order = body.channels === "before-behind" ? ([0, 1] as const) : ([1, 0] as const);
  let frequenciesHz = new Float64Array(0);
  const ratios = (name: RecordingName): Ratios | undefined => {
    if (!files[name]) return undefined;
    context.checkpoint();
    const [before, behind] = readBoth(body.signal, recordedAs(name, files, 2), order);
    recordings.push(recordingTold(name, before, behind));
    frequenciesHz = Float64Array.from(before.frequenciesHz);
    const found = ratiosOf({ before, behind });
    requireOrder(found, name);
    return found;
  };
  const measured = ratios("measured")!;
  const recorded = { gain: ratios("gain"), open: ratios("open"), short: ratios("short") };
  if (recorded.open) requireOpenAbove(measured, recorded.open, frequenciesHz);
  const input = body.input && Array.from(frequenciesHz, (hz) => inputImpedance(across(body.input), hz));
  const rig: Rig = { ...recorded, input };
  const points = impedanceBehind(measured, frequenciesHz, body.resistor, rig);
  requirePart(body.part, points);
  const told = partOf(body, points, recorded.open !== undefined || input !== undefined, context);
  requireTold(body.part, told);
  const { frequenciesHz: frequencies, ohms, degrees, errors } = tableOf(points);
  return {
    method: "series-resistor",
    recordings,
    impedance: {
      frequencies: [...frequencies],
      ohms: [...ohms],
      degrees: [...(degrees ?? [])],
      errors: [...(errors ?? [])],
    },
    ...told,
    scaleError: body.resistorTolerance,
    notes: notesOf(body, recorded.open !== undefined, points),
  };
}
