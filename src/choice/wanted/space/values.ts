import type { PlanInput } from "../../../build-file/plans/plan-schema.ts";
import type { Build } from "../../../build-file/schema.ts";
import { shortQuantity } from "../../../build-file/show-quantity.ts";
import { OPEN_OHMS } from "../../search/extended-build.ts";
import type { Patch } from "../../variant.ts";

/** A treble bleed by its values; null for none. */
export type Bleed = { readonly capacitance: number; readonly parallel?: number | undefined } | null;

/** What pots, caps and treble bleeds may be, in SI units. */
export interface Values {
  readonly volume: readonly number[];
  readonly tone: readonly number[];
  readonly cap: readonly number[];
  readonly bleed: readonly Bleed[];
}

/** Customary values; common practice, no source. */
export const USUAL_VALUES: Values = {
  volume: [250e3, 500e3, 1e6],
  tone: [250e3, 500e3],
  cap: [10e-9, 22e-9, 47e-9],
  bleed: [
    null,
    { capacitance: 680e-12 },
    { capacitance: 680e-12, parallel: 150e3 },
    { capacitance: 1e-9, parallel: 150e3 },
  ],
};

/** One thing to choose of a guard, in the build for trying and in the plan for keeping. */
export interface Axis {
  readonly size: number;
  /** The one that the plan has to begin with. */
  readonly own: number;
  readonly patchesFor: (choice: number) => readonly Patch[];
  readonly planWith: (plan: PlanInput, choice: number) => PlanInput;
}

type Pot = { readonly pot: number | string; readonly measured?: number | string | undefined };

function withPot<Written extends Pot>({ measured: _, ...rest }: Written, ohms: number) {
  return { ...rest, pot: shortQuantity(ohms) };
}

function namesOf(build: Build, role: "volume" | "tone"): string[] {
  return Object.entries(build.parts).flatMap(([name, part]) =>
    part.kind === "pot" && part.role === role ? [name] : [],
  );
}

function valueAxis(
  build: Build,
  names: readonly string[],
  field: "resistance" | "capacitance",
  values: readonly number[],
  planWith: (plan: PlanInput, value: number) => PlanInput,
): Axis[] {
  const first = names[0] === undefined ? undefined : build.parts[names[0]];
  if (!first) return [];
  const own = (first as unknown as Record<string, number>)[field]!;
  const choices = values.includes(own) ? values : [own, ...values];
  const fieldsOf = (name: string) =>
    (build.parts[name] as { measured?: number }).measured === undefined ? [field] : [field, "measured"];
  return [
    {
      size: choices.length,
      own: choices.indexOf(own),
      patchesFor: (choice) =>
        names.flatMap((part) => fieldsOf(part).map((each) => ({ part, field: each, value: choices[choice]! }))),
      planWith: (plan, choice) => planWith(plan, choices[choice]!),
    },
  ];
}

function withVolume(plan: PlanInput, ohms: number): PlanInput {
  const { volume, volumes } = plan;
  if (volumes) return { ...plan, volumes: volumes.map((each) => withPot(each, ohms)) };
  return { ...plan, volume: typeof volume === "object" ? withPot(volume, ohms) : shortQuantity(ohms) };
}

function withCap(plan: PlanInput, farads: number): PlanInput {
  const written = shortQuantity(farads);
  const tones = plan.tones?.map((tone) => (tone.cap === undefined ? tone : { ...tone, cap: written }));
  return {
    ...plan,
    ...(tones ? { tones } : {}),
    ...(plan.sharedCap === undefined ? {} : { sharedCap: written }),
  };
}

function withBleed({ trebleBleed: _, ...plan }: PlanInput, bleed: Bleed): PlanInput {
  if (!bleed) return plan;
  const { capacitance, parallel } = bleed;
  const resistor = parallel === undefined ? {} : { parallel: shortQuantity(parallel) };
  return { ...plan, trebleBleed: { capacitance: shortQuantity(capacitance), ...resistor } };
}

const isBleed = (name: string, kind: "cap" | "resistor") =>
  new RegExp(kind === "cap" ? "^bleed\\d?$" : "^bleedResistor\\d?$").test(name);

function bleedAxis(build: Build, own: Bleed, bleeds: readonly Bleed[]): Axis[] {
  const names = Object.keys(build.parts);
  const caps = names.filter((name) => isBleed(name, "cap"));
  const resistors = names.filter((name) => isBleed(name, "resistor"));
  if (caps.length === 0 || resistors.length === 0) return [];
  const same = (a: Bleed, b: Bleed) => a?.capacitance === b?.capacitance && a?.parallel === b?.parallel;
  const found = bleeds.findIndex((bleed) => same(bleed, own));
  const choices = found < 0 ? [own, ...bleeds] : bleeds;
  return [
    {
      size: choices.length,
      own: Math.max(0, found),
      patchesFor: (choice) => {
        const bleed = choices[choice]!;
        return [
          ...caps.map((part) => ({ part, field: "capacitance", value: bleed?.capacitance ?? 0 })),
          ...resistors.map((part) => ({ part, field: "resistance", value: bleed?.parallel ?? OPEN_OHMS })),
        ];
      },
      planWith: (plan, choice) => withBleed(plan, choices[choice]!),
    },
  ];
}

/** Stands in for whatever bleed is tried, so that all of them are one wiring. */
const ANY_BLEED: Bleed = { capacitance: 680e-12, parallel: 150e3 };

/** A plan whose wiring takes every treble bleed that may be tried; one in line with its resistor is another wiring and stays. */
export function planToTry(plan: PlanInput): PlanInput {
  return plan.trebleBleed?.series === undefined ? withBleed(plan, ANY_BLEED) : plan;
}

/** @param build of `planToTry` @param bleed the plan's own */
export function axesOf(build: Build, bleed: Bleed, values: Values): Axis[] {
  const caps = Object.entries(build.parts).flatMap(([name, { kind }]) =>
    kind === "cap" && !isBleed(name, "cap") ? [name] : [],
  );
  const withTone = (plan: PlanInput, ohms: number): PlanInput => ({
    ...plan,
    ...(plan.tones ? { tones: plan.tones.map((tone) => withPot(tone, ohms)) } : {}),
  });
  return [
    ...valueAxis(build, namesOf(build, "volume"), "resistance", values.volume, withVolume),
    ...valueAxis(build, namesOf(build, "tone"), "resistance", values.tone, withTone),
    ...valueAxis(build, caps, "capacitance", values.cap, withCap),
    ...bleedAxis(build, bleed, values.bleed),
  ];
}
