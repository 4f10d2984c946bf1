import type { MeterModel } from "../../meter/meter-model.ts";
import { scaledBy } from "../../meter/reading-taker.ts";
import { editModel } from "../edits/edit-model.ts";
import type { Fault } from "../fault.ts";
import type { Evidence } from "../likelihood/evidence.ts";
import type { Likelihood } from "../likelihood/likelihood.ts";
import { Predictor, type Question } from "../likelihood/predictor.ts";
import { explainsAll, type Hypothesis } from "./hypothesis.ts";

const REFINEMENTS = 2;

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

  /**
   * The evidence for a model with its parts and wipers moved.
   * @param deviations ln (value / nominal) of each unknown
   * @param free the unknown, if any, that no tolerance binds
   */
  weighAbout(model: MeterModel, deviations: Float64Array, free?: number): Evidence {
    const moved = withDeviations(model, this.#predictor.questions, deviations);
    return this.#likelihood.weigh(this.#predictor.predict(moved.model, moved.questions), deviations, free);
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
