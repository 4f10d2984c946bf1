import { LugTable } from "../../build-file/lugs.ts";
import type { Build } from "../../build-file/schema.ts";
import {
  Controls,
  parseSettings,
  type RawSettings,
  rawSettings,
  type SettingValue,
} from "../../build-file/settings.ts";
import { faultAt } from "../../errors.ts";
import { REFERENCE_CELSIUS } from "./copper.ts";
import { LEADS_OHMS } from "./hobby-meter.ts";
import { type MeterModel, meterModelOf, meterStateOf } from "./meter-model.ts";
import { NOT_SWEPT, Ohmmeter, type Probes } from "./ohmmeter.ts";
import { type ReadingPlan, standingReadings } from "./standing-readings.ts";

export interface Reading {
  readonly label: string;
  readonly settings: Readonly<Record<string, SettingValue>>;
  readonly between: readonly [string, string];
  /** The pot swept through its whole travel for the highest reading. */
  readonly sweep?: string;
  /** Ohms; null where open. */
  readonly ohms: number | null;
  /** With every part at the low end of its tolerance; null where open. */
  readonly low: number | null;
  readonly high: number | null;
}

/** Two lugs that a caller asks for. */
export interface ProbeRequest {
  readonly between: readonly [string, string];
  readonly settings?: RawSettings | undefined;
  readonly sweep?: string | undefined;
}

export interface ToleranceUsed {
  readonly part: string;
  readonly coil?: string;
  readonly tolerance: number;
}

export interface MeterReadings {
  readonly temperature: number;
  readonly readings: readonly Reading[];
  readonly probes: readonly Reading[];
  /** Parts whose tolerance is common practice because the build names none. */
  readonly defaultTolerances: readonly ToleranceUsed[];
}

const SWEEP_REFINEMENTS = 40;

/** The model with every part at the low (−1) or the high (1) end of its tolerance. */
export function scaledBy(model: MeterModel, sign: 1 | -1): MeterModel {
  const { resistors, parameters } = model.parts;
  const ohms = model.ohms.map(
    (value, index) => value * (1 + sign * parameters[resistors[index]!.parameter]!.tolerance.fraction),
  );
  return { ...model, ohms };
}

/** The track that a sweep of a pot turns, by its pot's name. */
export function sweptTrackOf(model: MeterModel, pot: string | undefined): number {
  return pot === undefined ? NOT_SWEPT : model.parts.tracks.findIndex((track) => track.pot === pot);
}

/**
 * Reads plans off a build. Resistance between two points never falls when any one resistance rises (Rayleigh's monotonicity
 * law), so all parts low and all parts high bound the reading exactly.
 */
export class ReadingTaker {
  readonly model: MeterModel;
  readonly #controls: Controls;
  readonly #low: MeterModel;
  readonly #high: MeterModel;
  readonly #meter: Ohmmeter;

  /** @param celsius temperature of the coils */
  constructor(build: Build, celsius: number) {
    this.model = meterModelOf(build, celsius);
    this.#controls = new Controls(build);
    this.#low = scaledBy(this.model, -1);
    this.#high = scaledBy(this.model, 1);
    this.#meter = new Ohmmeter(this.model);
  }

  take(plan: ReadingPlan): Reading {
    const { lugs } = this.model.parts;
    const [from, to] = [lugs.indexOf(plan.between[0]), lugs.indexOf(plan.between[1])];
    const probes = { from, to, sweptTrack: sweptTrackOf(this.model, plan.sweep) };
    const ohms = this.#ohms(this.model, plan, probes);
    return {
      label: plan.label,
      settings: rawSettings(this.#controls, plan.settings),
      between: [lugs.nameAt(from), lugs.nameAt(to)],
      ...(plan.sweep === undefined ? {} : { sweep: plan.sweep }),
      ohms,
      low: this.#ohms(this.#low, plan, probes),
      high: ohms === 0 ? LEADS_OHMS : this.#ohms(this.#high, plan, probes),
    };
  }

  #ohms(model: MeterModel, plan: ReadingPlan, probes: Probes): number | null {
    const ohms = this.#meter.measure(model, meterStateOf(model, plan.settings), probes, SWEEP_REFINEMENTS);
    return Number.isFinite(ohms) ? ohms : null;
  }
}

/**
 * A caller's reading as a plan, its names checked against the build.
 * @param path where the request stands in the input, for messages
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID naming the field
 */
export function planOf(build: Build, controls: Controls, request: ProbeRequest, path: string): ReadingPlan {
  const table = new LugTable(build.parts);
  for (const [index, lug] of request.between.entries()) {
    if (table.find(lug) === undefined)
      throw faultAt("REQUEST_INVALID", `${path}.between.${index}`, table.complaint(lug));
  }
  const settings = parseSettings(controls, request.settings, `${path}.settings`);
  const { sweep } = request;
  if (sweep === undefined) return { label: request.between.join(" to "), between: request.between, settings };
  const target = controls.resolve(sweep);
  const pot = target && "pots" in target && target.pots.length === 1 ? target.pots[0] : undefined;
  if (pot === undefined) {
    const message = `"${sweep.slice(0, 60)}" names no single pot; expected one of ${controls.pots.join(", ")}`;
    throw faultAt("REQUEST_INVALID", `${path}.sweep`, message);
  }
  return {
    label: `${request.between.join(" to ")}, highest as ${pot} is swept`,
    between: request.between,
    settings,
    sweep: pot,
  };
}

function defaultTolerances({ parts }: MeterModel): ToleranceUsed[] {
  return parts.parameters
    .filter((parameter) => parameter.tolerance.byDefault)
    .map(({ part, coil, tolerance }) => ({
      part,
      ...(coil === undefined ? {} : { coil }),
      tolerance: tolerance.fraction,
    }));
}

/**
 * What an ohmmeter must read on a sound guard, nothing plugged in.
 * @param celsius temperature of the coils, whose resistance the build gives at 20 °C
 */
export function meterReadings(
  build: Build,
  { celsius = REFERENCE_CELSIUS, probes = [] }: { celsius?: number; probes?: readonly ProbeRequest[] } = {},
): MeterReadings {
  const taker = new ReadingTaker(build, celsius);
  const controls = new Controls(build);
  return {
    temperature: celsius,
    readings: standingReadings(build).map((plan) => taker.take(plan)),
    probes: probes.map((probe, index) => taker.take(planOf(build, controls, probe, `probes.${index}`))),
    defaultTolerances: defaultTolerances(taker.model),
  };
}
