import type { MeterModel } from "../../meter/meter-model.ts";
import { scaledBy } from "../../meter/reading-taker.ts";
import { editModel } from "../edits/edit-model.ts";
import type { Fault } from "../fault.ts";
import type { Evidence } from "../likelihood/evidence.ts";
import type { Likelihood } from "../likelihood/likelihood.ts";
import { type Prediction, Predictor, type Question } from "../likelihood/predictor.ts";
import { explainsAll, type Hypothesis } from "./hypothesis.ts";

const REFINEMENTS = 2;
const SOLVING_ROUNDS = 5;

/** A value that no tolerance binds, as the readings have it. */
export interface SolvedValue {
  /** As a multiple of the model's. */
  readonly factor: number;
  readonly evidence: Evidence;
}

/** Weighs one hypothesis after another against what was measured. */
export class Weigher {
  readonly sound: MeterModel;
  readonly #predictor: Predictor;
  readonly #likelihood: Likelihood;
  readonly #logPrior: (faults: readonly Fault[]) => number;
  #count = 0;

  constructor(
    sound: MeterModel,
    questions: readonly Question[],
    likelihood: Likelihood,
    logPrior: (faults: readonly Fault[]) => number,
  ) {
    this.sound = sound;
    this.#predictor = new Predictor(sound, questions);
    this.#likelihood = likelihood;
    this.#logPrior = logPrior;
  }

  /** How many hypotheses have been weighed. */
  get count(): number {
    return this.#count;
  }

  /** Unknowns of every weighing: parts, then wipers. */
  get unknownCount(): number {
    return this.#predictor.unknownCount;
  }

  /** The guard with these faults; its readings are taken to be linear about nominal parts. */
  weigh(faults: readonly Fault[]): Hypothesis {
    this.#count++;
    const model = editModel(
      this.sound,
      faults.flatMap((fault) => fault.edits),
    );
    const prediction = this.#predictor.predict(model);
    const evidence = this.#likelihood.weigh(prediction);
    const logPrior = this.#logPrior(faults);
    return { faults, logPrior, model, prediction, evidence, logSymptoms: 0, explains: explainsAll(evidence) };
  }

  /** The guard with these faults, its readings weighed already. */
  withEvidence(faults: readonly Fault[], evidence: Evidence): Hypothesis {
    return { ...this.weigh(faults), evidence, explains: explainsAll(evidence) };
  }

  /**
   * A value by Gauss and Newton from the best of several starts, all other parts and wipers moving within their tolerances.
   * @param starts multiples of the model's value to begin at
   * @param floor ln of the evidence below which none of the starts is worth going on from
   * @returns undefined where the value runs further off than `maxFactor` either way
   */
  solved(
    model: MeterModel,
    parameter: number,
    starts: readonly number[],
    maxFactor: number,
    floor: number,
  ): SolvedValue | undefined {
    const begun = starts.map((factor) => {
      const around = new Float64Array(this.unknownCount);
      around[parameter] = Math.log(factor);
      return this.weighAbout(model, around, parameter);
    });
    const isOutOfRange = ({ deviations }: Evidence) => Math.abs(deviations[parameter]!) > Math.log(maxFactor);
    let evidence = begun.reduce((best, each) => (each.log > best.log ? each : best));
    if (evidence.log < floor) return undefined;
    for (let round = 0; round < SOLVING_ROUNDS; round++) {
      if (isOutOfRange(evidence)) return undefined;
      evidence = this.weighAbout(model, evidence.deviations, parameter);
    }
    return isOutOfRange(evidence) ? undefined : { factor: Math.exp(evidence.deviations[parameter]!), evidence };
  }

  /** How far apart two guards read, as chi-square: below one or so, nothing given can tell them apart. */
  separation(a: Hypothesis, b: Hypothesis): number {
    return this.#likelihood.separation(a.prediction, b.prediction);
  }

  /**
   * The evidence for a model with its parts and wipers moved.
   * @param deviations ln (value / nominal) of each unknown
   * @param free the unknown, if any, that no tolerance binds
   */
  weighAbout(model: MeterModel, deviations: Float64Array, free?: number): Evidence {
    const moved = withDeviations(model, this.#predictor.questions, deviations);
    return this.#likelihood.weigh(this.#predictor.predict(moved.model, moved.questions), deviations, free);
  }

  /** What a model reads with its parts and wipers moved. @param deviations ln (value / nominal) of each unknown */
  foretold(model: MeterModel, deviations: Float64Array): Prediction {
    const moved = withDeviations(model, this.#predictor.questions, deviations);
    return this.#predictor.predict(moved.model, moved.questions);
  }

  /** The hypothesis weighed again about its own likeliest parts, and held to what its tolerances allow. */
  refined(hypothesis: Hypothesis): Hypothesis {
    let { evidence } = hypothesis;
    for (let round = 0; round < REFINEMENTS; round++) evidence = this.weighAbout(hypothesis.model, evidence.deviations);
    return { ...hypothesis, evidence, explains: explainsAll(evidence) && this.#isWithin(hypothesis) };
  }

  #isWithin({ model, prediction }: Hypothesis): boolean {
    const [low, high] = ([-1, 1] as const).map((sign) => this.#predictor.predict(scaledBy(model, sign)).ohms);
    return this.#likelihood.isWithin(prediction, low!, high!);
  }
}

/** The model and the questions with parts and wipers moved by the given deviations. */
function withDeviations(model: MeterModel, questions: readonly Question[], deviations: Float64Array) {
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
