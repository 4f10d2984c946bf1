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
import {
  inGain,
  requireGain,
  siemensOfGain,
  UNKNOWN_GAIN,
  UNKNOWN_GAIN_NOTE,
} from "../../../measure/methods/channel-gain.ts";
import { type InputFound, inputFound, inputNotes } from "../../../measure/methods/input-found.ts";
import { requireOpenAbove } from "../../../measure/methods/open-run.ts";
import { requirePart } from "../../../measure/methods/part-kind.ts";
import { capacitorOf, resistorOf } from "../../../measure/methods/part-values.ts";
import {
  capacitanceBehindUnknown,
  coilBehindUnknown,
  coilWithin,
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

/** What of the rig nobody measured or told. */
interface Unknown {
  readonly isInputKnown: boolean;
  /** What gains that nobody measured seem to put across the part, siemens; 0 where they were, or cancel. */
  readonly siemens: number;
}

function coilOf(
  body: ResistorBody,
  points: readonly Point[],
  { isInputKnown, siemens }: Unknown,
  context: JobContext,
): FittedAnswer {
  const job = { method: "impedance", table: tableOf(points), known: knownOf(body) } as const;
  const fit = fittedAnswerOf(job, runFit(job, context));
  const values = coilWithin(fit.values, siemens);
  return { ...fit, values: isInputKnown ? values : coilBehindUnknown(values) };
}

function capacitanceOf(points: readonly Point[], { isInputKnown, siemens }: Unknown): Told {
  const { capacitance, lossFactor } = capacitorOf(points);
  if (!capacitance) return {};
  const loss = lossFactor && lossBehindUnknown(lossFactor, capacitance.value, siemens);
  if (isInputKnown) return { capacitance, ...(loss && { lossFactor: loss }) };
  return {
    capacitance: capacitanceBehindUnknown(capacitance),
    ...(loss && { lossFactor: lossBehindUnknown(loss, capacitance.value) }),
  };
}

function partOf(body: ResistorBody, points: readonly Point[], unknown: Unknown, context: JobContext): Told {
  switch (body.part) {
    case "coil":
      return { fit: coilOf(body, points, unknown, context) };
    case "resistor": {
      const { resistance } = resistorOf(points);
      if (!resistance) return {};
      const within = resistanceBehindUnknown(resistance, unknown.siemens);
      return { resistance: unknown.isInputKnown ? within : resistanceBehindUnknown(within) };
    }
    case "capacitor":
    case "lead":
      return capacitanceOf(points, unknown);
  }
}

/** @throws DATA_INSUFFICIENT where the part named is not what was measured */
function requireTold(part: string, told: object): void {
  if (Object.keys(told).length > 0) return;
  const message = `what was measured is no ${part}: its current does not lead the voltage; say which part it is`;
  throw faultAt("DATA_INSUFFICIENT", "part", message);
}

function notesOf(
  { input, part }: ResistorBody,
  found: InputFound | undefined,
  isGainKnown: boolean,
  points: readonly Point[],
): string[] {
  const unstated = input ? [STATED_INPUT_NOTE] : unknownInputNotes(part, points);
  return [...(found ? inputNotes(found) : unstated), ...(isGainKnown ? [] : [UNKNOWN_GAIN_NOTE])];
}

/** @throws DATA_INSUFFICIENT where a recording has its channels swapped, or `gain` was not on one point */
function requireRig({ gain, ...behind }: Readonly<Record<"measured" | "gain" | "open" | "short", Ratios | undefined>>) {
  if (gain) requireGain(gain, "gain");
  for (const [name, ratios] of Object.entries(behind)) {
    if (ratios) requireOrder(inGain(ratios, gain), name, gain !== undefined);
  }
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
    return ratiosOf({ before, behind });
  };
  const measured = ratios("measured")!;
  const recorded = { gain: ratios("gain"), open: ratios("open"), short: ratios("short") };
  requireRig({ measured, ...recorded });
  if (recorded.open) requireOpenAbove(measured, recorded.open, frequenciesHz);
  const input = body.input && Array.from(frequenciesHz, (hz) => inputImpedance(across(body.input), hz));
  const rig: Rig = { ...recorded, input };
  const points = impedanceBehind(measured, frequenciesHz, body.resistor, rig);
  requirePart(body.part, points);
  const { gain, open } = recorded;
  const unknown: Unknown = {
    isInputKnown: open !== undefined || input !== undefined,
    siemens: gain || open ? 0 : siemensOfGain(body.resistor),
  };
  const told = partOf(body, points, unknown, context);
  requireTold(body.part, told);
  const found = open && inputFound(open, gain, body.resistor, frequenciesHz);
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
    ...(found ? { input: found } : {}),
    scaleError: body.resistorTolerance + (gain ? 0 : UNKNOWN_GAIN),
    notes: notesOf(body, found, gain !== undefined, points),
  };
}
