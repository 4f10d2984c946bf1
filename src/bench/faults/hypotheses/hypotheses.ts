import type { Build } from "../../../build-file/schema.ts";
import type { MeterModel } from "../../meter/meter-model.ts";
import { scaledBy } from "../../meter/readings.ts";
import { editModel } from "../edits/edit-model.ts";
import { FAULT_WEIGHTS, type Fault } from "../fault.ts";
import { valueFault } from "../kinds/value-faults.ts";
import type { Evidence, Scales } from "../likelihood/likelihood.ts";
import { type Prediction, Predictor, type Question } from "../likelihood/predictor.ts";

/** No fault, one, or two. */
export interface Hypothesis {
  readonly faults: readonly Fault[];
  readonly logPrior: number;
  readonly model: MeterModel;
  readonly prediction: Prediction;
  readonly evidence: Evidence;
  /** ln P(symptoms | this), 0 where none were told. */
  readonly logSymptoms: number;
  /** Whether it accounts for every reading. */
  readonly explains: boolean;
}

/** Less likely than this, the readings are not what an explanation predicts: one true explanation in a thousand is lost. */
const MIN_FIT = 1e-3;

/** Half of the guards that somebody measures are sound, and few of those that somebody complains of (no source). */
const SOUND_SHARE = { measured: 0.5, complainedOf: 0.05 } as const;
/** Two faults at once, beside one (common practice, no source). */
const SECOND_FAULT_SHARE = 0.2;
/** Hypotheses whose likeliest parts the readings are weighed at again; the first look is linear about nominal parts. */
const REFINED = 60;
const REFINEMENTS = 2;
/** Where to begin looking for the value of a part that no tolerance binds, as multiples of the build's. */
const STARTS = [0.06, 0.15, 0.35, 0.65, 1.5, 3, 7, 16] as const;
const SOLVING_ROUNDS = 5;
/** Predictions made to solve one value. */
const SOLVING_COST = STARTS.length + SOLVING_ROUNDS + 1;
/** A part further off than this is open or shorted, which are faults of their own. */
const MAX_FACTOR = 30;
/** Pairs grow from this many of the best single faults. */
const PAIR_SEEDS = 12;

export function score(hypothesis: Hypothesis): number {
  return hypothesis.logPrior + hypothesis.evidence.log + hypothesis.logSymptoms;
}

/** Orders by score, best first. */
export function byScore(a: Hypothesis, b: Hypothesis): number {
  return score(b) - score(a);
}

/** Weighs every way in which a guard can be, sound or faulty, against what was measured. */
export class Court {
  readonly #sound: MeterModel;
  readonly #predictor: Predictor;
  readonly #scales: Scales;
  readonly #totalWeight: number;
  readonly #faults: readonly Fault[];

  readonly #checkpoint: () => void;
  readonly #soundShare: number;
  #heardCount = 0;

  constructor(
    sound: MeterModel,
    questions: readonly Question[],
    scales: Scales,
    faults: readonly Fault[],
    isComplainedOf: boolean,
    checkpoint: () => void,
  ) {
    this.#soundShare = isComplainedOf ? SOUND_SHARE.complainedOf : SOUND_SHARE.measured;
    this.#checkpoint = checkpoint;
    this.#sound = sound;
    this.#predictor = new Predictor(sound, questions);
    this.#scales = scales;
    this.#faults = faults;
    this.#totalWeight = faults.reduce((sum, { kind }) => sum + FAULT_WEIGHTS[kind], 0);
  }

  /** How many hypotheses have been weighed. */
  get heardCount(): number {
    return this.#heardCount;
  }

  hear(faults: readonly Fault[]): Hypothesis {
    this.#heardCount++;
    const model = editModel(
      this.#sound,
      faults.flatMap((fault) => fault.edits),
    );
    const prediction = this.#predictor.predict(model);
    const evidence = this.#scales.weigh(prediction);
    const logPrior = this.#logPrior(faults);
    return { faults, logPrior, model, prediction, evidence, logSymptoms: 0, explains: explainsAll(evidence) };
  }

  /**
   * Every part whose value may be another than the build's, with the value that the readings speak for; at most so many
   * predictions are made. Parts that the readings do not move out of their tolerance are left out: they are sound.
   */
  values(build: Build, most: number): Hypothesis[] {
    return this.#valuesBeside(build, this.hear([]), Math.floor(most / SOLVING_COST));
  }

  /** The best single faults each joined by a part of another value. */
  valuesBeside(build: Build, singles: readonly Hypothesis[], most: number): Hypothesis[] {
    const perSeed = this.#sound.parts.parameters.length;
    const seedCount = Math.min(PAIR_SEEDS, Math.floor(most / SOLVING_COST / Math.max(1, perSeed)));
    const seeds = singles.filter(({ faults }) => faults.length === 1).slice(0, seedCount);
    return seeds.flatMap((seed) => this.#valuesBeside(build, seed, perSeed));
  }

  #valuesBeside(build: Build, base: Hypothesis, mostParts: number): Hypothesis[] {
    this.#checkpoint();
    const { parameters } = this.#sound.parts;
    return parameters.slice(0, mostParts).flatMap((_, parameter) => this.#solved(build, base, parameter) ?? []);
  }

  /** By Gauss and Newton from the best of several starts, all other parts and wipers moving within their tolerances. */
  #solved(build: Build, base: Hypothesis, parameter: number): Hypothesis | undefined {
    const spec = this.#sound.parts.parameters[parameter]!;
    const isTaken = base.faults.some(({ edits }) => edits.some((edit) => "part" in edit && edit.part === spec.part));
    const evidence = isTaken || !this.#shows(base, parameter) ? undefined : this.#solvedEvidence(base, parameter);
    if (!evidence) return undefined;
    const factor = Math.exp(evidence.deviations[parameter]!);
    if (Math.abs(factor - 1) <= spec.tolerance.fraction) return undefined;
    const fault = valueFault(build, spec, factor);
    return fault && { ...this.hear([...base.faults, fault]), evidence, explains: explainsAll(evidence) };
  }

  /** Whether the parameter moves any reading at all. */
  #shows({ prediction: { slopes } }: Hypothesis, parameter: number): boolean {
    for (let at = parameter; at < slopes.length; at += this.#predictor.unknownCount) if (slopes[at] !== 0) return true;
    return false;
  }

  #solvedEvidence(base: Hypothesis, parameter: number): Evidence | undefined {
    const weighAt = (around: Float64Array) => {
      const { model, questions } = deviated(base.model, this.#predictor.questions, around);
      return this.#scales.weigh(this.#predictor.predict(model, questions), around, parameter);
    };
    const starts = STARTS.map((factor) => {
      const around = new Float64Array(this.#predictor.unknownCount);
      around[parameter] = Math.log(factor);
      return weighAt(around);
    });
    const isOutOfRange = ({ deviations }: Evidence) => Math.abs(deviations[parameter]!) > Math.log(MAX_FACTOR);
    let evidence = starts.reduce((best, each) => (each.log > best.log ? each : best));
    for (let round = 0; round < SOLVING_ROUNDS; round++) {
      if (isOutOfRange(evidence)) return undefined;
      evidence = weighAt(evidence.deviations);
    }
    return isOutOfRange(evidence) ? undefined : evidence;
  }

  /** The sound guard and every single fault, best first; those in front weighed about their own likeliest parts. */
  singles(): Hypothesis[] {
    const all = [this.hear([]), ...this.#faults.map((fault) => this.hear([fault]))].sort(byScore);
    this.#checkpoint();
    return [...all.slice(0, REFINED).map((each) => this.#refined(each)), ...all.slice(REFINED)].sort(byScore);
  }

  /** The best single faults each joined by any other, at most so many, the likeliest pairs first. */
  pairs(singles: readonly Hypothesis[], most: number): Hypothesis[] {
    const seedCount = Math.min(PAIR_SEEDS, Math.floor(most / this.#faults.length));
    const seeds = singles.filter(({ faults }) => faults.length === 1).slice(0, seedCount);
    const seen = new Set<Fault>();
    const all = seeds.flatMap(({ faults: [first] }) => {
      seen.add(first!);
      this.#checkpoint();
      return this.#faults
        .filter((second) => !seen.has(second) && compatible(first!, second))
        .map((second) => this.hear([first!, second]));
    });
    const best = all.sort(byScore).slice(0, REFINED);
    return best.map((each) => this.#refined(each)).sort(byScore);
  }

  #logPrior(faults: readonly Fault[]): number {
    if (faults.length === 0) return Math.log(this.#soundShare);
    const each = faults.map(({ kind }) => Math.log(FAULT_WEIGHTS[kind] / this.#totalWeight));
    const share = faults.length === 1 ? 1 - SECOND_FAULT_SHARE : SECOND_FAULT_SHARE;
    return Math.log((1 - this.#soundShare) * share) + each.reduce((sum, value) => sum + value, 0);
  }

  #refined(hypothesis: Hypothesis): Hypothesis {
    let { evidence } = hypothesis;
    for (let round = 0; round < REFINEMENTS; round++) {
      const around = evidence.deviations;
      const { model, questions } = deviated(hypothesis.model, this.#predictor.questions, around);
      evidence = this.#scales.weigh(this.#predictor.predict(model, questions), around);
    }
    return { ...hypothesis, evidence, explains: explainsAll(evidence) && this.#isWithin(hypothesis) };
  }

  #isWithin({ model, prediction }: Hypothesis): boolean {
    const [low, high] = ([-1, 1] as const).map((sign) => this.#predictor.predict(scaledBy(model, sign)).ohms);
    return this.#scales.isWithin(prediction, low!, high!);
  }
}

function explainsAll({ missed, fit }: Evidence): boolean {
  return missed.length === 0 && fit >= MIN_FIT;
}

/** The model and the questions with parts and wipers moved by the given deviations. */
function deviated(model: MeterModel, questions: readonly Question[], deviations: Float64Array) {
  const { resistors, parameters, tracks } = model.parts;
  const ohms = model.ohms.map((value, index) => value * Math.exp(deviations[resistors[index]!.parameter]!));
  const moved = new Map<Question["state"], Question["state"]>();
  for (const { state } of questions) {
    if (moved.has(state)) continue;
    const fractions = state.fractions.map((x, track) =>
      x <= 0 || x >= 1 ? x : 1 / (1 + ((1 - x) / x) * Math.exp(-deviations[parameters.length + track]!)),
    );
    moved.set(state, tracks.length === 0 ? state : { ...state, fractions });
  }
  return {
    model: { ...model, ohms },
    questions: questions.map((question) => ({ ...question, state: moved.get(question.state)! })),
  };
}

/** Two faults of one wire, or of one part's value, exclude each other. */
function compatible(first: Fault, second: Fault): boolean {
  return !first.edits.some((one) =>
    second.edits.some((other) => {
      if ("wire" in one && "wire" in other) return one.wire === other.wire;
      return "part" in one && "part" in other && one.part === other.part;
    }),
  );
}
