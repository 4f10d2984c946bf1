import type { Alternative } from "../../../src/bench/faults/answer/explanations.ts";
import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import type { MeasuredReading } from "../../../src/bench/faults/diagnose-request.ts";
import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import type { Fault } from "../../../src/bench/faults/fault.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { valueFault } from "../../../src/bench/faults/kinds/value-faults.ts";
import { meterModelOf } from "../../../src/bench/meter/meter-model.ts";
import { ReadingTaker } from "../../../src/bench/meter/reading-taker.ts";
import { standingReadings } from "../../../src/bench/meter/standing-readings.ts";
import type { Build, Part } from "../../../src/build-file/schema.ts";
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

const METER_NOISE = 0.01;

/** Every standing reading of a guard as a meter with 1 % of noise shows it, its leads included. */
export function measured(sound: Build, guard: Build, random: Random): MeasuredReading[] {
  const taker = new ReadingTaker(guard, 20);
  const controls = new Controls(sound);
  return standingReadings(sound).map((plan) => {
    const { ohms } = taker.take(plan);
    return {
      between: plan.between,
      settings: rawSettings(controls, plan.settings),
      ...(plan.sweep === undefined ? {} : { sweep: plan.sweep }),
      ohms: ohms === null || ohms > 20e6 ? null : ohms * (1 + METER_NOISE * normal(random)) + 0.4 * random(),
    };
  });
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
