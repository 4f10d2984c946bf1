import type { Build } from "../build-file/schema.ts";
import type { Finding } from "./audit/audit.ts";
import { auditBuild } from "./audit/audit.ts";
import { hardwareOf } from "./hardware/hardware.ts";
import type { HardwareLine } from "./hardware/hardware-line.ts";
import { copperFactor } from "./meter/copper.ts";
import { type ImpedanceReading, impedanceReadings } from "./meter/impedance-readings.ts";
import type { OwnMeter } from "./meter/own/own-meter.ts";
import type { ProbeRequest } from "./meter/reading-plan.ts";
import { type MeterReadings, meterReadings } from "./meter/readings.ts";
import { coilFromReading, potAndCoilFromSweep, type Solved } from "./meter/solve-backwards.ts";
import { type Mounting, mountingOf } from "./mounting/mounting.ts";
import type { DrawerItem } from "./parts/drawer.ts";
import { type PartsList, partsList } from "./parts/parts-list.ts";
import { type PhaseCheck, phaseCheck } from "./phase-check.ts";
import { type BuildSheet, buildSheet } from "./sheet/build-sheet.ts";
import type { SheetOptions } from "./sheet/options.ts";
import { type BestTurn, bestTurns } from "./turns/best-turns.ts";

export interface BenchRequest extends SheetOptions {
  /** °C, of the coils. */
  readonly temperature: number;
  /** The person's own, where they said which. */
  readonly meter?: OwnMeter | undefined;
  readonly probes: readonly ProbeRequest[];
  readonly solve?: SolveRequest | undefined;
  readonly drawer: readonly DrawerItem[];
}

/** What a meter showed at the jack, to be solved backwards. All in ohms. */
export interface SolveRequest {
  readonly coil?: { readonly reading: number; readonly pot: number; readonly tolerance: number } | undefined;
  readonly sweep?: { readonly atTen: number; readonly highest: number } | undefined;
}

export interface SolveAnswer {
  /** As it was read, and at 20 °C. */
  readonly coil?: Solved & { readonly at20: number };
  readonly sweep?: { readonly coil: number; readonly pot: number };
}

export interface BenchAnswer extends MeterReadings {
  readonly audit: readonly Finding[];
  readonly impedances: readonly ImpedanceReading[];
  readonly sheet: BuildSheet;
  readonly partsList: Omit<PartsList, "staysOver">;
  readonly staysOver: PartsList["staysOver"];
  readonly hardware: readonly HardwareLine[];
  readonly mounting: Mounting;
  readonly phaseCheck: PhaseCheck;
  readonly turns: readonly BestTurn[];
  readonly solved?: SolveAnswer;
}

function solve({ coil, sweep }: SolveRequest, celsius: number): SolveAnswer {
  const solved = coil && coilFromReading(coil.reading, coil.pot, coil.tolerance);
  return {
    ...(solved ? { coil: { ...solved, at20: solved.ohms / copperFactor(celsius) } } : {}),
    ...(sweep ? { sweep: potAndCoilFromSweep(sweep.atTen, sweep.highest) } : {}),
  };
}

/**
 * Everything the bench has to say about a build.
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field at fault
 */
export function benchSheet(build: Build, request: BenchRequest): BenchAnswer {
  const audit = auditBuild(build);
  const meter = meterReadings(build, { celsius: request.temperature, probes: request.probes, meter: request.meter });
  const sheet = buildSheet(build, request, { readings: meter.readings, audit });
  const { staysOver, ...list } = partsList(build, sheet.cuts, request.drawer);
  return {
    audit,
    ...meter,
    impedances: impedanceReadings(build),
    sheet,
    partsList: list,
    staysOver,
    hardware: hardwareOf(build),
    mounting: mountingOf(build, meter.readings, request.temperature),
    phaseCheck: phaseCheck(build),
    turns: bestTurns(build),
    ...(request.solve ? { solved: solve(request.solve, request.temperature) } : {}),
  };
}
