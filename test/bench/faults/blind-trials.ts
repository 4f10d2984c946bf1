import type { Alternative } from "../../../src/bench/faults/answer/explanations.ts";
import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import type { MeasuredReading } from "../../../src/bench/faults/diagnose-request.ts";
import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import type { Fault } from "../../../src/bench/faults/fault.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { valueFault } from "../../../src/bench/faults/kinds/value-faults.ts";
import { type MeterModel, meterModelOf, meterStateOf } from "../../../src/bench/meter/meter-model.ts";
import { Ohmmeter } from "../../../src/bench/meter/ohmmeter.ts";
import type { ReadingPlan } from "../../../src/bench/meter/reading-plan.ts";
import { sweptTrackOf } from "../../../src/bench/meter/reading-taker.ts";
import { standingReadings } from "../../../src/bench/meter/standing-readings.ts";
import { endRangeOf } from "../../../src/build-file/end-resistance.ts";
import { USUAL_END_OHMS } from "../../../src/build-file/part-schemas.ts";
import type { Build, Part, PartOf } from "../../../src/build-file/schema.ts";
import { Controls, rawSettings } from "../../../src/build-file/settings.ts";
import { coilTolerance, trackTolerance, valueTolerance } from "../../../src/build-file/tolerances.ts";

export type Random = () => number;

/** A small seeded generator (mulberry32), so that a trial can be repeated. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

function anywhere(value: number, tolerance: number, random: Random): number {
  return value * (1 + tolerance * (2 * random() - 1));
}

function withinTolerance(part: Part, random: Random): Part {
  if (part.kind === "pickup") {
    const coils = Object.entries(part.coils).map(([name, coil]) => {
      const { fraction } = coilTolerance(part, coil);
      return [name, { ...coil, resistance: anywhere(coil.resistance, fraction, random) }];
    });
    return { ...part, coils: Object.fromEntries(coils) };
  }
  if (part.kind === "pot") {
    const { fraction } = trackTolerance(part, part.measured);
    const { measured, ...rest } = part;
    return { ...rest, resistance: anywhere(measured ?? part.resistance, fraction, random) };
  }
  if (part.kind === "resistor") {
    return { ...part, resistance: anywhere(part.resistance, valueTolerance(part).fraction, random) };
  }
  return part;
}

/** The same wiring of parts bought at random. */
export function assembled(build: Build, random: Random): Build {
  const parts = Object.entries(build.parts).map(([name, part]) => [name, withinTolerance(part, random)]);
  return { ...build, parts: Object.fromEntries(parts) };
}

/** Ohms, evenly on a log scale; as drawn for tolerances. */
function leftAtEnd({ parts }: Build, name: string, resistance: number, random: Random): number {
  const pot = parts[name] as PartOf<"pot">;
  const { low, high } = endRangeOf(pot, { resistance, measured: undefined, endResistance: USUAL_END_OHMS })!;
  return low * (high / low) ** random();
}

const METER_NOISE = 0.01;
const SWEEP_ROUNDS = 40;

/** Reads a guard whose wipers stand off their ends: by 0.5 Ω to what sheets allow counter-clockwise, 1 to 30 Ω clockwise. */
class WornMeter {
  readonly #model: MeterModel;
  readonly #meter: Ohmmeter;
  readonly #ends: readonly { readonly low: number; readonly high: number }[];

  constructor(guard: Build, random: Random) {
    this.#model = meterModelOf(guard, 20);
    this.#meter = new Ohmmeter(this.#model);
    const trackOhms = new Map(
      this.#model.parts.resistors.map(({ track }, index) => [track, this.#model.ohms[index]!] as const),
    );
    this.#ends = this.#model.parts.tracks.map(({ pot }, track) => ({
      low: leftAtEnd(guard, pot, trackOhms.get(track)!, random) / trackOhms.get(track)!,
      high: 30 ** random() / trackOhms.get(track)!,
    }));
  }

  /** Ohms; null where open. */
  read({ between, settings, sweep }: ReadingPlan): number | null {
    const [from, to] = between.map((lug) => this.#model.parts.lugs.indexOf(lug)) as [number, number];
    const state = meterStateOf(this.#model, settings);
    const fractions = state.fractions.map((x, track) => {
      const { low, high } = this.#ends[track]!;
      return x < 0 ? x : Math.max(low, Math.min(1 - high, x));
    });
    const probes = { from, to, sweptTrack: sweptTrackOf(this.#model, sweep) };
    const ohms = this.#meter.measure(this.#model, { ...state, fractions }, probes, SWEEP_ROUNDS);
    return ohms > 20e6 ? null : ohms;
  }
}

/** Readings of a guard as a meter with noise shows them, its leads included, the pots' ends as pots have them. */
export function measuredAs(
  sound: Build,
  guard: Build,
  plans: readonly ReadingPlan[],
  random: Random,
  noise = METER_NOISE,
): MeasuredReading[] {
  const meter = new WornMeter(guard, random);
  const controls = new Controls(sound);
  return plans.map((plan) => {
    const ohms = meter.read(plan);
    return {
      between: plan.between,
      settings: rawSettings(controls, plan.settings),
      ...(plan.sweep === undefined ? {} : { sweep: plan.sweep }),
      ohms: ohms === null ? null : ohms * (1 + noise * normal(random)) + 0.4 * random(),
    };
  });
}

/** Every standing reading of a guard as a meter with 1 % of noise shows it. */
export function measured(sound: Build, guard: Build, random: Random): MeasuredReading[] {
  return measuredAs(sound, guard, standingReadings(sound), random);
}

function isSame(faults: readonly { kind: string; lugs: readonly string[] }[], truth: Fault | undefined): boolean {
  if (!truth) return faults.length === 1 && faults[0]!.kind === "none";
  return faults.length === 1 && faults[0]!.kind === truth.kind && faults[0]!.lugs.join() === truth.lugs.join();
}

/** The rank, from 1, of the explanation that names the truth or says it is the same as one that does; Infinity for none. */
export function rankOfTruth(build: Build, readings: readonly MeasuredReading[], truth: Fault | undefined): number {
  const { explanations } = diagnose(build, { readings });
  const index = explanations.findIndex(
    ({ faults, sameAs }) => isSame(faults, truth) || sameAs.some((other) => isSame(other.faults, truth)),
  );
  return index < 0 ? Number.POSITIVE_INFINITY : index + 1;
}

export interface TrialCount {
  trials: number;
  first: number;
  firstThree: number;
  readonly missed: string[];
}

/** Injects each of the faults once, in a guard of random parts, and asks the finder with nothing but the readings. */
export function faultTrials(build: Build, faults: readonly Fault[], random: Random): TrialCount {
  const count: TrialCount = { trials: 0, first: 0, firstThree: 0, missed: [] };
  for (const truth of faults) {
    const guard = editBuild(assembled(build, random), truth.edits);
    const rank = rankOfTruth(build, measured(build, guard, random), truth);
    count.trials++;
    if (rank === 1) count.first++;
    if (rank <= 3) count.firstThree++;
    if (rank > 1) count.missed.push(`${truth.kind} ${truth.lugs.join(" ")}: rank ${rank}`);
  }
  return count;
}

/** Whether a fault moves any reading by more than usual parts' tolerances do. */
function shows(sound: Build, faulty: Build): boolean {
  const [before, after] = [sound, faulty].map((guard) => measured(sound, guard, seeded(0)));
  return before!.some(({ ohms = null }, index) => {
    const other = after![index]!.ohms ?? null;
    if (ohms === null || other === null) return ohms !== other;
    return ohms > 3 && Math.abs(Math.log(ohms / other)) > 0.25;
  });
}

/** Every part of these other values that shows in the readings, and whether the finder names it first, with its value. */
export function valueTrials(build: Build, factors: readonly number[], random: Random): TrialCount {
  const count: TrialCount = { trials: 0, first: 0, firstThree: 0, missed: [] };
  const kinds = ["coil-value", "pot-value", "resistor-value", "wrong-pot-value"];
  for (const parameter of meterModelOf(build, 20).parts.parameters) {
    for (const factor of factors) {
      const truth = valueFault(build, parameter, factor)!;
      if (!shows(build, editBuild(build, truth.edits))) continue;
      const readings = measured(build, editBuild(assembled(build, random), truth.edits), random);
      const isTruth = ({ faults: [first, ...others] }: Alternative) =>
        others.length === 0 && kinds.includes(first!.kind) && first!.lugs.join() === truth.lugs.join();
      const { explanations } = diagnose(build, { readings });
      const index = explanations.findIndex((each) => [each, ...each.sameAs].some(isTruth));
      count.trials++;
      if (index === 0) count.first++;
      if (index >= 0 && index < 3) count.firstThree++;
      if (index !== 0) count.missed.push(`${truth.kind} ${truth.lugs} × ${factor}: rank ${index + 1}`);
    }
  }
  return count;
}

/** How many of so many sound guards are judged sound. */
export function soundTrials(build: Build, trials: number, random: Random): number {
  let sound = 0;
  for (let trial = 0; trial < trials; trial++) {
    const readings = measured(build, assembled(build, random), random);
    if (rankOfTruth(build, readings, undefined) === 1) sound++;
  }
  return sound;
}

export { singleFaults };
