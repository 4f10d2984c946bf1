import * as z from "zod";
import { JOINT_AGES } from "../../bench/faults/priors/fault-shares.ts";
import { oneOf, quantity, strict } from "../../build-file/zod-tools.ts";
import { MAX_LABEL_CHARS, MAX_NAME_CHARS, MAX_PROBES, MAX_TAKES } from "../../limits.ts";
import { meterField } from "../bench/meter-field.ts";
import { temperatureField } from "../bench/probe-fields.ts";
import { measuredField } from "../diagnose.ts";
import { buildField, settingsField } from "../fields.ts";
import { inputField } from "../fit.ts";
import { kindField } from "../measure/signal.ts";
import { TAPS_FILE, tapFields } from "../measure/taps.ts";
import type { Sent } from "../wire.ts";

/** The form's fields that WAV files may come in; a take names its own. */
export const TAKE_FILES = Array.from({ length: MAX_TAKES }, (_, index) => `take${index + 1}`);
/** Both channels on one point. */
export const GAIN_FILE = "gain";
export const EXAMINE_FILES = [...TAKE_FILES, GAIN_FILE, TAPS_FILE];

const rigField = strict({
  resistor: quantity("resistance", { min: 1e3, max: 1e7 }, "between the player's output and the jack's tip"),
  tolerance: z.number().min(0).max(0.2).default(0.01).describe("of the resistor, a fraction; common to all takes"),
  channels: oneOf(["before-behind", "behind-before"])
    .default("before-behind")
    .describe("what the first and the second channel hang on: what is played, and the jack"),
  input: inputField
    .optional()
    .describe(
      "what hangs across the jack while it is recorded: the interface's input and its lead, as an open run of /api/measure " +
        "gives it; of what is left out: 1 MΩ and 160 pF, fitted along",
    ),
}).describe("how the interface hangs on the guard, the same in all takes");

const name = z.string().min(1).max(MAX_NAME_CHARS);

const exciterField = strict({
  pickup: name.describe("the pickup that a small coil lies on"),
  coil: name.optional().describe("of its coils the one; left out where it has one alone"),
}).describe(
  "a small coil laid over this coil plays the signal and stays where it is, the same side up each time, while the settings " +
    "change; of two channels the first or second (`rig.channels`) has what is played, of one the jack alone",
);

const throughField = z
  .union([z.literal("jack"), exciterField], { error: () => 'expected "jack" or {"pickup", "coil"}' })
  .describe(
    '"jack": the signal goes through the resistor into the jack, and both sides of the resistor are recorded; which gives the ' +
      "guard's impedance there",
  );

const takeField = strict({
  file: oneOf(TAKE_FILES as [string, ...string[]]).describe("the form's field with this take's WAV file"),
  settings: settingsField.optional(),
  through: throughField.default("jack"),
  label: z.string().max(MAX_LABEL_CHARS).optional().describe("what the person calls it, and the answer with them"),
});

export const examineRequestSchema = strict({
  build: buildField.describe("the guard as it was drawn"),
  signal: kindField,
  rig: rigField.optional().describe("needed with takes"),
  takes: z
    .array(takeField)
    .max(MAX_TAKES)
    .default([])
    .describe("what was recorded of /api/sweep.wav; without any, the answer is which takes to make"),
  taps: strict(tapFields)
    .optional()
    .describe("with the form's file `taps`, recorded as /api/taps plans it; weighed together with the takes"),
  readings: z
    .array(measuredField)
    .max(MAX_PROBES)
    .default([])
    .describe("what a meter showed, as /api/diagnose takes it; weighed together with the takes"),
  joints: z.enum(JOINT_AGES).optional().describe("how old the joints are, as in /api/diagnose"),
  temperature: temperatureField,
  meter: meterField,
});

export type ExamineRequest = Sent<typeof examineRequestSchema>;
export type ExamineBody = z.output<typeof examineRequestSchema>;
