import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import type { Edit } from "../../../src/bench/faults/edits/edit.ts";
import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import { editModel } from "../../../src/bench/faults/edits/edit-model.ts";
import { withSpareJoint } from "../../../src/bench/faults/edits/spare-joint.ts";
import type { Fault, FaultKind } from "../../../src/bench/faults/fault.ts";
import { guardWiringOf } from "../../../src/bench/faults/kinds/guard-wiring.ts";
import { resistivePlaces } from "../../../src/bench/faults/kinds/resistive-joints.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { valueFault } from "../../../src/bench/faults/kinds/value-faults.ts";
import { mainPositions } from "../../../src/bench/main-positions.ts";
import { meterModelOf } from "../../../src/bench/meter/meter-model.ts";
import type { ReadingPlan } from "../../../src/bench/meter/reading-plan.ts";
import { ReadingTaker } from "../../../src/bench/meter/reading-taker.ts";
import { standingReadings } from "../../../src/bench/meter/standing-readings.ts";
import { SYMPTOM_CODES } from "../../../src/bench/symptoms/symptom-codes.ts";
import { type Symptom, Witness } from "../../../src/bench/symptoms/witness.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { Controls, rawSettings, withControl } from "../../../src/build-file/settings.ts";
import { assembled, measuredAs, type Random } from "./blind-trials.ts";

/** What is injected: a single fault of a family, two of different ones, or none. */
export const FAMILIES = [
  "open wire",
  "reversed pot",
  "wrong pot",
  "broken coil",
  "shorted turns",
  "cold joint",
  "poor joint",
  "leaking end",
  "swapped leads",
  "moving part",
] as const;
export type Family = (typeof FAMILIES)[number];
export type Sort = Family | "double" | "sound";

/** A fault is named by these kinds and the lugs that it was injected with. */
interface Injected {
  readonly fault: Fault;
  /** Other kinds that name the same: a pot of another usual value is a pot of another value. */
  readonly kinds: readonly FaultKind[];
}

function pick<Item>(items: readonly Item[], random: Random): Item {
  return items[Math.floor(random() * items.length)]!;
}

const KINDS: Readonly<Partial<Record<Family, readonly FaultKind[]>>> = {
  "open wire": ["wire-open"],
  "reversed pot": ["outer-lugs-swapped"],
  "broken coil": ["coil-open"],
  "swapped leads": ["leads-swapped", "coil-leads-swapped"],
  "moving part": ["pot-scratchy", "switch-worn", "jack-spring", "cable-bad", "pickup-microphonic"],
};

function ofKinds(build: Build, kinds: readonly FaultKind[]): Injected[] {
  return singleFaults(build)
    .filter(({ kind }) => kinds.includes(kind))
    .map((fault) => ({ fault, kinds: [fault.kind] }));
}

function wrongPots(build: Build): Injected[] {
  return ofKinds(build, ["wrong-pot-value"]).map(({ fault }) => ({ fault, kinds: ["wrong-pot-value", "pot-value"] }));
}

function shortedTurns(build: Build, random: Random): Injected[] {
  const coils = meterModelOf(build, 20).parts.parameters.filter(({ coil }) => coil !== undefined);
  const fault = valueFault(build, pick(coils, random), 0.4 + 0.35 * random())!;
  return [{ fault, kinds: ["coil-value"] }];
}

function atPlace(build: Build, kind: FaultKind, ohms: number, random: Random): Injected[] {
  const faults = resistivePlaces(guardWiringOf(build)).flatMap((place) => place.faults(ohms));
  return [
    {
      fault: pick(
        faults.filter((each) => each.kind === kind),
        random,
      ),
      kinds: [kind],
    },
  ];
}

/** One fault of a family, drawn; undefined where the guard can have none. */
export function drawn(build: Build, family: Family, random: Random): Injected | undefined {
  const spread = (low: number, high: number) => low * (high / low) ** random();
  switch (family) {
    case "wrong pot":
      return pick(wrongPots(build), random);
    case "shorted turns":
      return pick(shortedTurns(build, random), random);
    case "cold joint":
      return pick(atPlace(build, "joint-resistive", spread(50, 500), random), random);
    case "poor joint":
      return pick(atPlace(build, "joint-resistive", spread(2e3, 50e3), random), random);
    case "leaking end":
      return pick(atPlace(build, "pot-end-leaks", spread(6e3, 40e3), random), random);
    default:
      return pick(ofKinds(build, KINDS[family]!), random);
  }
}

/** The jack in every position of the main switch, at most five, then with the volume at 5 and at 0. */
export function fiveReadings(build: Build): ReadingPlan[] {
  const controls = new Controls(build);
  const [{ between }] = standingReadings(build) as [ReadingPlan];
  const positions = mainPositions(controls).slice(0, 5);
  const volume = controls.potsWithRole("volume")[0];
  const turned =
    volume === undefined ? [] : [5, 0].map((dial) => withControl(controls, positions[0]!.settings, volume, dial));
  return [...positions.map(({ settings }) => settings), ...turned]
    .slice(0, 5)
    .map((settings) => ({ label: "jack", between, settings }));
}

/** A symptom that this probable is told by whoever has the guard. */
const NOTICED = 0.7;
const MOST_TOLD = 3;

/** Up to three things that somebody with this guard notices, of all that there is to notice in any position. */
function noticed(build: Build, faults: readonly Fault[], guard: Build, random: Random): Symptom[] {
  const controls = new Controls(build);
  const wheres = mainPositions(controls).map(({ settings }) => rawSettings(controls, settings));
  const pots = [...controls.potsWithRole("tone"), ...controls.potsWithRole("volume")];
  const all = SYMPTOM_CODES.flatMap((code): Symptom[] => {
    if (/^(tone|volume)-/.test(code)) {
      const role = code.startsWith("tone") ? "tone" : "volume";
      return controls.potsWithRole(role).flatMap((control) => wheres.map((settings) => ({ code, settings, control })));
    }
    if (code === "pot-scratchy" || code === "pot-turns") return pots.map((control) => ({ code, control }));
    return wheres.map((settings) => ({ code, settings }));
  });
  const model = meterModelOf(build, 20);
  const chances = new Witness(build, model, all).chances({ faults, model: meterModelOf(guard, 20) });
  const left = all.filter((_, index) => chances[index]! > NOTICED);
  const told: Symptom[] = [];
  const most = Math.floor(random() * (MOST_TOLD + 1));
  while (told.length < most && left.length > 0) told.push(...left.splice(Math.floor(random() * left.length), 1));
  return told;
}

export interface Trial {
  readonly sort: Sort;
  readonly truth: string;
  /** Rank, from 1, of the explanation that names the truth or reads the same; Infinity for none. */
  readonly rank: number;
  /** Whether the first explanation or one that reads the same is the truth. */
  readonly isRight: boolean;
  /** The same, or it is the truth but for a second fault that changes nothing of what was told. */
  readonly isEqual: boolean;
  /** Whether the first explanation names at least one of the faults. */
  readonly isPartly: boolean;
  readonly probability: number;
  readonly said: string;
}

type Named = readonly { readonly kind: string; readonly lugs: readonly string[] }[];

function names(faults: Named, { fault, kinds }: Injected): boolean {
  return faults.some(
    ({ kind, lugs }) => (kinds as readonly string[]).includes(kind) && lugs.join() === fault.lugs.join(),
  );
}

function isTruth(faults: Named, truth: readonly Injected[]): boolean {
  if (truth.length === 0) return faults.length === 1 && faults[0]!.kind === "none";
  return faults.length === truth.length && truth.every((each) => names(faults, each));
}

function twoFamilies(random: Random): Family[] {
  const first = pick(FAMILIES, random);
  const second = pick(
    FAMILIES.filter((each) => each !== first || each === "open wire"),
    random,
  );
  return [first, second];
}

/** Two faults of one wire, one part or one joint are no two faults; a model holds one poor joint. */
function areCompatible(found: readonly Injected[]): boolean {
  const marks = found.map(({ fault }) =>
    fault.edits.map((edit) =>
      "wire" in edit ? `wire ${edit.wire}` : "part" in edit ? edit.part : "ohms" in edit ? "joint" : "",
    ),
  );
  const isPoor = ({ fault }: Injected) => fault.edits.some(({ edit }) => edit.startsWith("resist-"));
  if (found.filter(isPoor).length > 1) return false;
  return found.length < 2 || !marks[0]!.some((mark) => mark !== "" && marks[1]!.includes(mark));
}

/** A fault that changes no reading by more than parts of usual tolerance do is no part of what can be told. */
const IDLE_LOG_RATIO = 0.02;

/** Whether a fault changes nothing in readings and symptoms beside the others. */
function isIdle(build: Build, truth: readonly Injected[], one: Injected, symptoms: readonly Symptom[]): boolean {
  const others = truth.filter((each) => each !== one).map(({ fault }) => fault);
  const both = truth.map(({ fault }) => fault);
  const read = (faults: readonly Fault[]) => {
    const taker = new ReadingTaker(
      editBuild(
        build,
        faults.flatMap(({ edits }) => edits),
      ),
      20,
    );
    return fiveReadings(build).map((plan) => taker.take(plan).ohms ?? 20e6);
  };
  const [with_, without] = [read(both), read(others)];
  if (with_.some((ohms, index) => Math.abs(Math.log((ohms + 3) / (without[index]! + 3))) > IDLE_LOG_RATIO))
    return false;
  const chances = (faults: readonly Fault[]) => {
    const model = editModel(
      withSpareJoint(meterModelOf(build, 20)),
      faults.flatMap(({ edits }) => edits),
    );
    return new Witness(build, withSpareJoint(meterModelOf(build, 20)), symptoms).chances({ faults, model });
  };
  const without_ = chances(others);
  return chances(both).every((chance, index) => Math.abs(chance - without_[index]!) < 0.3);
}

/** One guard of random parts with what was drawn, diagnosed from five readings at the jack and what was noticed. */
export function trial(build: Build, sort: Sort, random: Random): Trial | undefined {
  const families = sort === "double" ? twoFamilies(random) : sort === "sound" ? [] : [sort];
  const found = families.map((family) => drawn(build, family, random));
  if (found.some((each) => each === undefined) || !areCompatible(found as Injected[])) return undefined;
  const truth = found as Injected[];
  const edits: Edit[] = truth.flatMap(({ fault }) => fault.edits);
  const guard = editBuild(assembled(build, random), edits);
  const noise = 0.01 + 0.02 * random();
  const readings = measuredAs(build, guard, fiveReadings(build), random, noise).map((each) =>
    typeof each.ohms === "number" && each.ohms > 3
      ? { ...each, low: each.ohms * (1 - noise), high: each.ohms * (1 + noise) }
      : each,
  );
  const symptoms =
    sort === "sound"
      ? []
      : noticed(
          build,
          truth.map(({ fault }) => fault),
          guard,
          random,
        );
  const { explanations, summary } = diagnose(build, { readings, symptoms });
  const all = explanations.map((each) => [each.faults, ...each.sameAs.map(({ faults }) => faults)]);
  const index = all.findIndex((alike) => alike.some((faults) => isTruth(faults, truth)));
  return {
    sort,
    truth: truth.map(({ fault }) => `${fault.kind} ${fault.lugs}`).join(" + "),
    rank: index < 0 ? Number.POSITIVE_INFINITY : index + 1,
    isRight: index === 0,
    isEqual:
      index === 0 ||
      truth.some(
        (one) =>
          isIdle(build, truth, one, symptoms) &&
          all[0]!.some((faults) =>
            isTruth(
              faults,
              truth.filter((each) => each !== one),
            ),
          ),
      ),
    isPartly: truth.some((each) => all[0]!.some((faults) => names(faults, each))),
    probability: explanations[0]!.probability,
    said: summary,
  };
}
