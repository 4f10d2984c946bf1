import type { Edit } from "../../src/bench/faults/edits/edit.ts";
import { FAULT_SHARES, type FaultKind } from "../../src/bench/faults/priors/fault-shares.ts";
import type { Build } from "../../src/build-file/schema.ts";
import type { Settings } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { valueAt, withPatches } from "../../src/choice/variant.ts";
import { verdictOf } from "../../src/examine/answer/verdict.ts";
import { type Departure, NOTHING } from "../../src/examine/departures/departure.ts";
import { departuresOf } from "../../src/examine/departures/departures.ts";
import { planFor, USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { type Take, usedFrequencies } from "../../src/examine/takes/take.ts";
import { anyName } from "../../src/examine/weigh/classes.ts";
import { weighingOf } from "../../src/examine/weigh/evidence-of.ts";
import { type Group, groupsOf } from "../../src/examine/weigh/groups.ts";
import { search } from "../../src/examine/weigh/search.ts";
import { TONES_HZ } from "../../src/measure/signal/multitone.ts";
import { benchOf, type Random, sharesOf, soldered } from "./simulated-guard.ts";
import { trialGuards } from "./trial-guards.ts";

const FREQUENCIES_HZ = Float64Array.from(usedFrequencies(TONES_HZ), (index) => TONES_HZ[index]!);
/** Poor joints from a hundred ohms to a hundred kilohms, as multiples of what the list has. */
const JOINT_FACTORS = [0.1, 100] as const;

/** A hidden departure and what it is called. */
export interface Truth {
  readonly departure: Departure;
  readonly edits: readonly Edit[];
  /** Values that are so many times the drawn ones. */
  readonly patches?: readonly { readonly part: string; readonly field: string; readonly factor: number }[];
  readonly names: readonly string[];
}

const nameOf = ({ kind, lugs }: { kind: string; lugs: readonly string[] }) => `${kind} ${lugs.join()}`;

/** How many times what is drawn another part is, either way: clear of any tolerance. */
const OTHER_FACTORS = [1.6, 4] as const;

const VALUE_KINDS: readonly FaultKind[] = [
  "wrong-pot-value",
  "pot-value",
  "resistor-value",
  "cap-ten-times",
  "cap-tenth",
  "wrong-cap-value",
  "cap-value",
  "coil-value",
];

/** A part of another value, which the search finds by a value of its own: a pot, a capacitor, a resistor or a coil. */
function otherValue(departure: Departure, random: Random): Truth | undefined {
  const [least, most] = OTHER_FACTORS;
  const size = least * (most / least) ** random();
  const factor = random() < 0.5 ? size : 1 / size;
  const { freed } = departure;
  const named = departure.faults(freed.map(() => factor));
  const patches = freed.map(({ part, field }) => ({ part, field, factor }));
  // Near a usual value it may be told as that one.
  const names = named.flatMap(({ lugs }) => VALUE_KINDS.map((kind) => nameOf({ kind, lugs })));
  return named.length === 0 ? undefined : { departure, edits: [], patches, names };
}

/** One departure, each kind as often as it is common. */
export function hiddenIn(build: Build, random: Random): Truth {
  const listed = departuresOf(build);
  const kindOf = (each: Departure) => anyName(each)[0]!.kind;
  const kinds = [...new Set(listed.map(kindOf))];
  let left = random() * kinds.reduce((sum, kind) => sum + FAULT_SHARES[kind].share, 0);
  const kind =
    kinds.find((each) => {
      left -= FAULT_SHARES[each].share;
      return left < 0;
    }) ?? kinds.at(-1)!;
  const options = listed.filter((each) => kindOf(each) === kind);
  const departure = options[Math.floor(random() * options.length)]!;
  const other = departure.freed.length > 0 ? otherValue(departure, random) : undefined;
  if (other) return other;
  const [low, high] = JOINT_FACTORS;
  const factor = low * (high / low) ** random();
  const edits = departure.edits.map((edit) => ("ohms" in edit ? { ...edit, ohms: edit.ohms * factor } : edit));
  return { departure, edits, names: departure.faults([factor]).map(nameOf) };
}

/** The drawing with the parts of the truth in it, of which a guard is then soldered. */
function withPatched(build: Build, truth: Truth | undefined): Build {
  const patches = (truth?.patches ?? []).map(({ part, field, factor }) => ({
    part,
    field,
    value: factor * valueAt(build, part, field)!,
  }));
  return withPatches(build, patches);
}

/** Takes, of the plan where no settings are given, of a guard soldered of parts as they come. */
export function takesOf(
  build: Build,
  edits: readonly Edit[],
  random: Random,
  settings: readonly Settings[] = planFor(build).map((each) => each.settings),
): Take[] {
  const guard = soldered(build, edits, random);
  const bench = benchOf(USUAL_RIG.resistorOhms, random);
  return settings.map((each) => ({
    settings: each,
    through: "jack",
    frequenciesHz: FREQUENCIES_HZ,
    hasReference: true,
    ...sharesOf(guard, each, FREQUENCIES_HZ, bench, random),
  }));
}

export interface Outcome {
  readonly groups: readonly Group[];
  /** Of the group that names the truth, from 1; 0 for none. */
  readonly rank: number;
  /** Whether no take can show the truth at all. */
  readonly isUnseen: boolean;
}

/** Examines a guard with that departure, or sound, by the takes of its plan. */
export function examined(build: Build, truth: Truth | undefined, random: Random): Outcome {
  const settings = planFor(build).map((each) => each.settings);
  const takes = takesOf(withPatched(build, truth), truth?.edits ?? [], random, settings);
  const { weigher } = weighingOf(build, { takes, rig: USUAL_RIG });
  const { candidates, slight } = search(weigher, departuresOf(build), undefined, NO_CHECKPOINT);
  const groups = groupsOf(weigher, candidates, slight);
  const names = truth?.names ?? [];
  const holds = ({ names: told, isSound }: Group) =>
    truth ? told.some(({ faults }) => faults.some((fault) => names.includes(nameOf(fault)))) : isSound;
  const isUnseen = truth !== undefined && weigher.keyOf(truth.departure) === weigher.keyOf(NOTHING);
  return { groups, rank: groups.findIndex(holds) + 1, isUnseen };
}

export interface Tally {
  faulty: number;
  first: number;
  firstThree: number;
  /** In first place beside the guard as drawn: the takes cannot tell them apart. */
  likeDrawn: number;
  unseen: number;
  sound: number;
  asDrawn: number;
  readonly missed: string[];
}

const told = ({ share, names, isSound }: Group) =>
  `${share.toFixed(2)} ${isSound ? "as drawn" : names[0]!.faults.map(nameOf).join()}`;

/** Guards in turn, each with one departure, and every `soundEvery`th sound. */
export function trials(count: number, soundEvery: number, random: Random): Tally {
  const tally: Tally = {
    faulty: 0,
    first: 0,
    firstThree: 0,
    likeDrawn: 0,
    unseen: 0,
    sound: 0,
    asDrawn: 0,
    missed: [],
  };
  for (let trial = 0; trial < count; trial++) {
    const { name, build } = trialGuards[trial % trialGuards.length]!;
    const truth = trial % soundEvery === soundEvery - 1 ? undefined : hiddenIn(build, random);
    const { groups, rank, isUnseen } = examined(build, truth, random);
    const best = groups[0]!;
    const isMissed = truth ? rank !== 1 && !isUnseen : verdictOf(groups) !== "as-drawn";
    if (isMissed)
      tally.missed.push(`${trial} ${name}: ${truth?.names[0] ?? "sound"}, ${groups.slice(0, 3).map(told).join("; ")}`);
    if (!truth) {
      tally.sound++;
      if (!isMissed) tally.asDrawn++;
    } else if (isUnseen) tally.unseen++;
    else {
      tally.faulty++;
      if (rank === 1) tally.first++;
      if (rank === 1 && best.isSound) tally.likeDrawn++;
      if (rank >= 1 && rank <= 3) tally.firstThree++;
    }
  }
  return tally;
}
