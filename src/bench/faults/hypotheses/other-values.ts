import type { Build } from "../../../build-file/schema.ts";
import { valueFault } from "../kinds/value-faults.ts";
import type { Evidence } from "../likelihood/evidence.ts";
import { PAIR_SEEDS } from "./hypotheses.ts";
import { explainsAll, type Hypothesis } from "./hypothesis.ts";
import type { Weigher } from "./weigher.ts";

/** Where to begin looking for the value of a part that no tolerance binds, as multiples of the build's. */
const STARTS = [0.06, 0.15, 0.35, 0.65, 1.5, 3, 7, 16] as const;
const SOLVING_ROUNDS = 5;
/** Predictions made to solve one value. */
const SOLVING_COST = STARTS.length + SOLVING_ROUNDS + 1;
/** A part further off than this is open or shorted, which are faults of their own. */
const MAX_FACTOR = 30;

/** Hypotheses in which a part has another value than the build says, solved from the readings. */
export class OtherValues {
  readonly #build: Build;
  readonly #weigher: Weigher;
  readonly #checkpoint: () => void;

  constructor(build: Build, weigher: Weigher, checkpoint: () => void) {
    this.#build = build;
    this.#weigher = weigher;
    this.#checkpoint = checkpoint;
  }

  get #parameters() {
    return this.#weigher.sound.parts.parameters;
  }

  /**
   * Every part whose value may be another than the build's, with the value that the readings speak for; at most so many
   * predictions are made. Parts that the readings do not move out of their tolerance are left out: they are sound.
   */
  singles(most: number): Hypothesis[] {
    return this.#besideOne(this.#weigher.weigh([]), Math.floor(most / SOLVING_COST));
  }

  /** The best single faults each joined by a part of another value. */
  beside(singles: readonly Hypothesis[], most: number): Hypothesis[] {
    const perSeed = this.#parameters.length;
    const seedCount = Math.min(PAIR_SEEDS, Math.floor(most / SOLVING_COST / Math.max(1, perSeed)));
    const seeds = singles.filter(({ faults }) => faults.length === 1).slice(0, seedCount);
    return seeds.flatMap((seed) => this.#besideOne(seed, perSeed));
  }

  #besideOne(base: Hypothesis, mostParts: number): Hypothesis[] {
    this.#checkpoint();
    return this.#parameters.slice(0, mostParts).flatMap((_, parameter) => this.#solved(base, parameter) ?? []);
  }

  #solved(base: Hypothesis, parameter: number): Hypothesis | undefined {
    const spec = this.#parameters[parameter]!;
    const isTaken = base.faults.some(({ edits }) => edits.some((edit) => "part" in edit && edit.part === spec.part));
    const evidence = isTaken || !this.#shows(base, parameter) ? undefined : this.#solvedEvidence(base, parameter);
    if (!evidence) return undefined;
    const factor = Math.exp(evidence.deviations[parameter]!);
    if (Math.abs(factor - 1) <= spec.tolerance.fraction) return undefined;
    const fault = valueFault(this.#build, spec, factor);
    return fault && { ...this.#weigher.weigh([...base.faults, fault]), evidence, explains: explainsAll(evidence) };
  }

  /** Whether the parameter moves any reading at all. */
  #shows({ prediction: { slopes } }: Hypothesis, parameter: number): boolean {
    for (let at = parameter; at < slopes.length; at += this.#weigher.unknownCount) if (slopes[at] !== 0) return true;
    return false;
  }

  /** By Gauss and Newton from the best of several starts, all other parts and wipers moving within their tolerances. */
  #solvedEvidence({ model }: Hypothesis, parameter: number): Evidence | undefined {
    const starts = STARTS.map((factor) => {
      const around = new Float64Array(this.#weigher.unknownCount);
      around[parameter] = Math.log(factor);
      return this.#weigher.weighAbout(model, around, parameter);
    });
    const isOutOfRange = ({ deviations }: Evidence) => Math.abs(deviations[parameter]!) > Math.log(MAX_FACTOR);
    let evidence = starts.reduce((best, each) => (each.log > best.log ? each : best));
    for (let round = 0; round < SOLVING_ROUNDS; round++) {
      if (isOutOfRange(evidence)) return undefined;
      evidence = this.#weigher.weighAbout(model, evidence.deviations, parameter);
    }
    return isOutOfRange(evidence) ? undefined : evidence;
  }
}
