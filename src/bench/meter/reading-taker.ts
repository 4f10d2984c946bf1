import type { Build } from "../../build-file/schema.ts";
import { Controls, rawSettings, type SettingValue } from "../../build-file/settings.ts";
import { LEADS_OHMS } from "./hobby-meter.ts";
import { type MeterModel, type MeterState, meterModelOf, meterStateOf } from "./meter-model.ts";
import { NOT_SWEPT, Ohmmeter, type Probes } from "./ohmmeter.ts";
import type { OnMeter } from "./own/display.ts";
import { USUAL_POT_END_OHMS, withOwnEnds, withPotEnds } from "./pot-ends.ts";
import type { ReadingPlan } from "./reading-plan.ts";

/** What a meter must read, and between what tolerances let it lie. */
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
  /** Present where nothing but the end of a pot's track is read: ohms that a good one stays under; above `high` something is wrong. */
  readonly potEndUnder?: number;
  /** Where the person said which meter is theirs; `low` and `high` are then as it may show them. */
  readonly meter?: OnMeter;
}

/** Ohms that the end of a track reads by the build, and at most by data sheets. */
interface PotEnd {
  readonly nominal: number;
  readonly most: number;
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
    const potEnd = ohms === 0 ? this.#potEnd(plan, probes) : undefined;
    return {
      label: plan.label,
      settings: rawSettings(this.#controls, plan.settings),
      between: [lugs.nameAt(from), lugs.nameAt(to)],
      ...(plan.sweep === undefined ? {} : { sweep: plan.sweep }),
      ohms: potEnd?.nominal ?? ohms,
      low: this.#ohms(this.#low, plan, probes),
      high: ohms === 0 ? (potEnd?.most ?? LEADS_OHMS) : this.#ohms(this.#high, plan, probes),
      ...(potEnd === undefined ? {} : { potEndUnder: Math.min(USUAL_POT_END_OHMS, potEnd.most) }),
    };
  }

  /** What the end of a pot's track adds where the wiring itself reads nothing; undefined where no pot's end is read. */
  #potEnd({ settings }: ReadingPlan, { from, to, sweptTrack }: Probes): PotEnd | undefined {
    if (sweptTrack !== NOT_SWEPT) return undefined;
    const state = meterStateOf(this.model, settings);
    const readIn = (raised: MeterState) => {
      this.#meter.prepare(this.model, raised);
      return this.#meter.read(from, to);
    };
    const most = readIn(withPotEnds(state, "all"));
    if (!(most > LEADS_OHMS && Number.isFinite(most))) return undefined;
    return { nominal: readIn(withOwnEnds(this.model, state)), most };
  }

  #ohms(model: MeterModel, plan: ReadingPlan, probes: Probes): number | null {
    const ohms = this.#meter.measure(model, meterStateOf(model, plan.settings), probes, SWEEP_REFINEMENTS);
    return Number.isFinite(ohms) ? ohms : null;
  }
}
