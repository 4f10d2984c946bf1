import type { Build } from "../../../build-file/schema.ts";
import { Controls, DIAL_MAX, rawSettings, type SettingValue, settingsKey } from "../../../build-file/settings.ts";
import { listed } from "../../../english.ts";
import { isJoint, isOpen } from "../../meter/hobby-meter.ts";
import type { MeterModel } from "../../meter/meter-model.ts";
import { overSign, rangeWords } from "../../meter/own/display.ts";
import type { OwnMeter } from "../../meter/own/own-meter.ts";
import { rangeFor } from "../../meter/own/range-for.ts";
import type { ReadingPlan } from "../../meter/reading-plan.ts";
import { standingReadings } from "../../meter/standing-readings.ts";
import type { NamedFault } from "../answer/explanations.ts";
import type { Hypothesis } from "../hypotheses/hypothesis.ts";
import { Predictor } from "../likelihood/predictor.ts";
import { questionsOf } from "../likelihood/questions.ts";
import { namesOf, type Suspect } from "./suspects.ts";

/** What readings are foretold of. */
type Read = Suspect<Pick<Hypothesis, "faults" | "model">>;

/** One thing that a further reading may show, and what it would then mean. */
export interface Outcome {
  readonly low: number | null;
  readonly high: number | null;
  /** How much of the belief, 0 to 1, expects it. */
  readonly share: number;
  readonly faults: readonly (readonly NamedFault[])[];
}

export interface NextMeasurement {
  readonly kind: "meter";
  readonly label: string;
  /** The same as a sentence. */
  readonly instruction: string;
  readonly between: readonly [string, string];
  readonly settings: Readonly<Record<string, SettingValue>>;
  readonly sweep?: string;
  readonly outcomes: readonly Outcome[];
}

/** Readings further apart than this, in ln R, cannot be the tolerance of usual parts: pots reach ±20 %. */
const APART_LOG_RATIO = 0.25;
/** A probe in an odder place must tell at least so much more, in nats, than one that comes before it. */
const WORTH_A_DETOUR = 0.03;
/** A measurement that separates less than this (nats) is not worth taking. */
const MIN_ENTROPY = 1e-6;

/** Readings worth considering: the standing ones, and across and around every lug under suspicion. */
function candidatePlans(build: Build, suspects: readonly Read[], taken: ReadonlySet<string>): ReadingPlan[] {
  const controls = new Controls(build);
  const settings = controls.atRest;
  const standing = standingReadings(build);
  const [tip, sleeve] = standing[0]!.between;
  const lugPairs = suspects.flatMap(({ hypothesis }) =>
    hypothesis.faults.flatMap(({ lugs }) => [
      ...lugs.flatMap((a, index) => lugs.slice(index + 1).map((b): [string, string] => [a, b])),
      ...lugs.flatMap((lug): [string, string][] => [
        [lug, tip],
        [lug, sleeve],
      ]),
    ]),
  );
  const probes = lugPairs
    .filter(([a, b]) => a !== b)
    .map((between): ReadingPlan => ({ label: between.join(" to "), between, settings }));
  const byKey = new Map<string, ReadingPlan>();
  for (const plan of [...standing, ...probes]) {
    const key = planKey(plan);
    if (!taken.has(key) && !byKey.has(key)) byKey.set(key, plan);
  }
  return [...byKey.values()];
}

/** The same for two plans that ask the same of the meter. */
export function planKey({ between, settings, sweep }: ReadingPlan): string {
  return JSON.stringify([[...between].sort(), settingsKey(settings), sweep]);
}

interface Bin {
  readonly low: number;
  high: number;
  share: number;
  readonly suspects: Read[];
}

/** What the meter could show, told apart as far as tolerances allow. */
function binsOf(readings: readonly { ohms: number; suspect: Read }[]): Bin[] {
  const ordered = [...readings].sort((a, b) => a.ohms - b.ohms);
  const bins: Bin[] = [];
  for (const { ohms, suspect } of ordered) {
    const bin = bins.at(-1);
    if (bin && together(bin.high, ohms)) {
      bin.high = ohms;
      bin.share += suspect.share;
      bin.suspects.push(suspect);
    } else bins.push({ low: ohms, high: ohms, share: suspect.share, suspects: [suspect] });
  }
  return bins;
}

function together(a: number, b: number): boolean {
  if (isOpen(a) || isOpen(b)) return isOpen(a);
  if (isJoint(a) || isJoint(b)) return isJoint(b);
  return Math.log(b / a) < APART_LOG_RATIO;
}

function entropy(bins: readonly Bin[]): number {
  return bins.reduce((sum, { share }) => sum - share * Math.log(share), 0);
}

function outcome({ low, high, share, suspects }: Bin): Outcome {
  const finite = (ohms: number) => (isOpen(ohms) ? null : ohms);
  const likeliest = [...suspects].sort((a, b) => b.share - a.share);
  return { low: finite(low), high: finite(high), share, faults: namesOf(likeliest) };
}

function instructionFor(controls: Controls, { between, settings: { switches, dials }, sweep }: ReadingPlan): string {
  const turned = Object.entries(dials).filter(([, dial]) => dial !== DIAL_MAX);
  const main = controls.main?.name;
  const states = [
    // A lesser switch at rest is as it is found.
    ...Object.entries(switches)
      .filter(([name, position]) => name === main || position !== 1)
      .map(([name, position]) => `${name} in position ${position}`),
    turned.length === 0 ? "all knobs at 10" : listed(turned.map(([name, dial]) => `${name} at ${dial}`)),
  ];
  const how = sweep === undefined ? "" : `, turning ${sweep} through its whole travel for the highest reading`;
  return `Next, measure from ${between[0]} to ${between[1]}, nothing plugged in, with ${listed(states)}${how}.`;
}

/** The range that holds the highest ohms which it may show; an open circuit is over that one too. */
function rangeToSet(meter: OwnMeter | undefined, bins: readonly Bin[]): string {
  if (meter === undefined || meter.ranging === "auto") return "";
  const most = Math.max(...bins.map(({ high }) => (isOpen(high) ? 0 : high)));
  const range = meter.range ?? rangeFor(meter, most === 0 ? null : most);
  const isOver = bins.some(({ high }) => isOpen(high));
  return ` Set ${rangeWords(meter, range)}${isOver ? `; what is open shows ${overSign(meter)} there` : ""}.`;
}

/** At least so many explanations must be told apart for a measurement to be worth computing. */
const MIN_SUSPECTS = 2;

/**
 * The one further reading that tells the leading explanations apart best: the one whose outcome is most uncertain (largest
 * entropy), seen from what is believed now.
 * @param affordable how many single readings may be predicted
 * @returns null where no reading with a meter tells them apart
 */
export function nextMeasurement(
  build: Build,
  model: MeterModel,
  leading: readonly Read[],
  taken: ReadonlySet<string>,
  affordable: number,
  meter?: OwnMeter,
): NextMeasurement | null {
  const all = candidatePlans(build, leading, taken);
  const suspects = leading.slice(0, Math.max(MIN_SUSPECTS, Math.floor(affordable / Math.max(1, all.length))));
  const plans = all.slice(0, Math.floor(affordable / Math.max(1, suspects.length)));
  const predictor = new Predictor(model, questionsOf(model, plans));
  const predictions = suspects.map(({ hypothesis }) => predictor.predict(hypothesis.model).ohms);
  let best: { plan: ReadingPlan; bins: Bin[]; entropy: number } | undefined;
  for (const [index, plan] of plans.entries()) {
    const bins = binsOf(suspects.map((suspect, at) => ({ ohms: predictions[at]![index]!, suspect })));
    const uncertainty = entropy(bins);
    if (uncertainty > (best ? best.entropy + WORTH_A_DETOUR : MIN_ENTROPY)) best = { plan, bins, entropy: uncertainty };
  }
  if (!best) return null;
  const { label, between, settings, sweep } = best.plan;
  return {
    kind: "meter",
    label,
    instruction: `${instructionFor(new Controls(build), best.plan)}${rangeToSet(meter, best.bins)}`,
    between,
    settings: rawSettings(new Controls(build), settings),
    ...(sweep === undefined ? {} : { sweep }),
    outcomes: best.bins.map(outcome),
  };
}
