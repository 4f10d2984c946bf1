import * as z from "zod";
import { strict } from "../../build-file/zod-tools.ts";
import { buildField } from "../fields.ts";
import type { Answered, Sent } from "../wire.ts";
import { auditAnswer } from "./audit.ts";
import { hardwareAnswer } from "./hardware.ts";
import { meterField } from "./meter-field.ts";
import { mountingAnswer } from "./mounting.ts";
import { drawerField, partsListAnswer, staysOverAnswer } from "./parts-list.ts";
import { phaseCheckAnswer } from "./phase-check.ts";
import { probesField, temperatureField } from "./probe-fields.ts";
import { impedancesAnswer, readingsAnswer, solvedAnswer, solveField } from "./readings.ts";
import { sheetAnswer } from "./sheet.ts";
import { allowancesField, kindsField, maxEndsField, reelsField } from "./sheet-fields.ts";
import { ironField } from "./sheet-heat.ts";
import { turnsAnswer } from "./turns.ts";

export const benchRequestSchema = strict({
  build: buildField,
  temperature: temperatureField,
  meter: meterField,
  probes: probesField,
  solve: solveField.optional(),
  allowances: allowancesField,
  reels: reelsField,
  kinds: kindsField,
  maxEnds: maxEndsField,
  iron: ironField,
  drawer: drawerField,
});

export const benchAnswerSchema = z.strictObject({
  audit: auditAnswer,
  ...readingsAnswer,
  impedances: impedancesAnswer,
  sheet: sheetAnswer,
  partsList: partsListAnswer,
  staysOver: staysOverAnswer,
  hardware: hardwareAnswer,
  mounting: mountingAnswer,
  phaseCheck: phaseCheckAnswer,
  turns: turnsAnswer,
  solved: solvedAnswer,
});

export type BenchRequest = Sent<typeof benchRequestSchema>;
export type BenchBody = z.output<typeof benchRequestSchema>;
export type BenchAnswer = Answered<typeof benchAnswerSchema>;
export type FindingAnswer = BenchAnswer["audit"][number];
export type MeterReadingAnswer = BenchAnswer["readings"][number];
export type SheetAnswer = BenchAnswer["sheet"];
export type HardwareAnswer = BenchAnswer["hardware"];
export type MountingAnswer = BenchAnswer["mounting"];
/** The parts list with what stays over of the drawer. */
export type PartsListAnswer = BenchAnswer["partsList"] & Pick<BenchAnswer, "staysOver">;
export type DrawerRequest = NonNullable<BenchRequest["drawer"]>[number];
