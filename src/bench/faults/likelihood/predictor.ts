import { isJoint } from "../../meter/hobby-meter.ts";
import type { MeterModel, MeterState } from "../../meter/meter-model.ts";
import { NOT_SWEPT, Ohmmeter, type Probes } from "../../meter/ohmmeter.ts";
import { type EndsRaised, withPotEnds } from "../../meter/pot-ends.ts";

/** What is asked of the meter, once for all faults. */
export interface Question {
  readonly state: MeterState;
  readonly probes: Probes;
}

/** Readings of one model, and how far each part moves each of them. */
export interface Prediction {
  /** Ohms; Infinity where open. */
  readonly ohms: Float64Array;
  /** What wipers as far off their ends as data sheets allow can make of each; as `ohms` where they change little. */
  readonly upTo: Float64Array;
  /** d ln R / d ln (part value), question by question, for every parameter and then for every track's wiper. */
  readonly slopes: Float64Array;
}

/** A sweep's highest reading changes with the wiper only to second order, so a few rounds are enough. */
const SWEEP_REFINEMENTS = 3;

/** The end of a track that changes a reading by less than this factor is lost among tolerances. */
const MATTERS = 1.02;

/** Predicts the same readings for one model after another. */
export class Predictor {
  readonly questions: readonly Question[];
  /** Unknowns of each row of `slopes`: parameters, then one a track for its wiper. */
  readonly unknownCount: number;
  readonly #meter: Ohmmeter;
  readonly #share: Float64Array;
  readonly #order: readonly number[];

  constructor(shape: MeterModel, questions: readonly Question[]) {
    this.questions = questions;
    this.unknownCount = shape.parts.parameters.length + shape.parts.tracks.length;
    this.#meter = new Ohmmeter(shape);
    this.#share = new Float64Array(shape.parts.resistors.length);
    this.#order = questions.map((_, index) => index).sort((a, b) => stateKey(questions[a]!) - stateKey(questions[b]!));
    function stateKey(question: Question): number {
      return questions.findIndex((other) => other.state === question.state && question.probes.sweptTrack === NOT_SWEPT);
    }
  }

  /** @param questions the same probes in states that stand in for those given, whose wipers a deviation has moved */
  predict(model: MeterModel, questions: readonly Question[] = this.questions): Prediction {
    const ohms = new Float64Array(this.questions.length);
    const slopes = new Float64Array(this.questions.length * this.unknownCount);
    let prepared: MeterState | undefined;
    for (const index of this.#order) {
      const { state, probes } = questions[index]!;
      if (probes.sweptTrack !== NOT_SWEPT) {
        ohms[index] = this.#meter.measure(model, state, probes, SWEEP_REFINEMENTS);
        prepared = undefined;
      } else {
        if (prepared !== state) this.#meter.prepare(model, state);
        prepared = state;
        ohms[index] = this.#meter.read(probes.from, probes.to);
      }
      if (ohms[index]! > 0 && ohms[index]! < Number.POSITIVE_INFINITY)
        this.#fillSlopes(model, questions[index]!, index * this.unknownCount, ohms[index]!, slopes);
    }
    return { ohms, upTo: this.#withEnds(model, questions, ohms), slopes };
  }

  #withEnds(model: MeterModel, questions: readonly Question[], ohms: Float64Array): Float64Array {
    const upTo = ohms.slice();
    const raise = (which: EndsRaised, concerns: (ohms: number, state: MeterState) => boolean) => {
      let prepared: MeterState | undefined;
      for (const index of this.#order) {
        const { state, probes } = questions[index]!;
        if (!concerns(ohms[index]!, state)) continue;
        const raised = this.#raised(model, state, probes, prepared === state, which);
        prepared = probes.sweptTrack === NOT_SWEPT ? state : undefined;
        if (!isJoint(raised) && raised > MATTERS * ohms[index]!) upTo[index] = raised;
      }
    };
    raise("all", (nominal) => isJoint(nominal));
    raise(
      "counter-clockwise",
      (nominal, state) => !isJoint(nominal) && Number.isFinite(nominal) && state.fractions.includes(0),
    );
    return upTo;
  }

  /** A reading with wipers off their ends; a sweep passes its own, not the others'. */
  #raised(model: MeterModel, state: MeterState, probes: Probes, isPrepared: boolean, which: EndsRaised): number {
    if (probes.sweptTrack !== NOT_SWEPT)
      return this.#meter.measure(model, withPotEnds(state, which), probes, SWEEP_REFINEMENTS);
    if (!isPrepared) this.#meter.prepare(model, withPotEnds(state, which));
    return this.#meter.read(probes.from, probes.to);
  }

  #fillSlopes(model: MeterModel, { state, probes }: Question, row: number, ohms: number, slopes: Float64Array): void {
    const share = this.#share.fill(0);
    this.#meter.shares(ohms, share);
    const { resistors, parameters } = model.parts;
    for (let i = 0; i < resistors.length; i++) {
      if (share[i] === 0) continue;
      const { parameter, span, track } = resistors[i]!;
      slopes[row + parameter]! += share[i]!;
      // A swept wiper stands where the reading is highest; its exact place no longer matters.
      if (track < 0 || track === probes.sweptTrack) continue;
      const fraction = state.fractions[track]!;
      // The wiper's unknown is the logit of its fraction: d ln (below) = 1 − x, d ln (above) = −x.
      slopes[row + parameters.length + track]! += share[i]! * (span === "below" ? 1 - fraction : -fraction);
    }
  }
}
