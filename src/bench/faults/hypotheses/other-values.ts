import type { Build } from "../../../build-file/schema.ts";
import { isAtJoint, isSpareJoint } from "../edits/spare-joint.ts";
import type { ResistivePlace } from "../kinds/resistive-joints.ts";
import { valueFault } from "../kinds/value-faults.ts";
import type { Hypothesis } from "./hypothesis.ts";
import type { Weigher } from "./weigher.ts";

/** Where to begin looking for the value of a part that no tolerance binds, as multiples of the build's. */
const PART_STARTS = [0.06, 0.15, 0.35, 0.65, 1.5, 3, 7, 16];
/** The same for a joint, as multiples of `JOINT_OHMS`. */
const JOINT_STARTS = [0.03, 0.1, 0.3, 1, 3, 10, 30, 100];
/** The middle of what poor joints have, from tens of ohms to a hundred kilohms (common practice, no source). */
export const JOINT_OHMS = 1000;
/** A joint of less is good, and one of more is open as far as a guitar goes. */
const POOR_JOINT = { least: 15, most: 300e3 };
/** So many poor joints are too slight to show among tolerances (common practice, no source). */
const SLIGHT_SHARE = 0.3;
/** Further behind the best that is known than this, in nats, no start gets to the front. */
const HOPELESS = 30;
/** Where a guard fits as well as this, no other value can make the readings likelier by anything that counts. */
const GOOD_FIT = 0.3;
/** A poor joint that makes the readings hardly likelier, in nats, cannot be told from none. */
const MIN_GAIN = 1;
/** One that makes them so much likelier is no longer too slight to show. */
const SURE_GAIN = 4;
/** A part further off than this is open or shorted, which are faults of their own. */
const MAX_FACTOR = 30;
/** Predictions made to solve one value, about. */
const SOLVING_COST = 14;

/** Hypotheses in which a part or a joint has another value than the build says, solved from the readings. */
export class OtherValues {
  readonly #build: Build;
  readonly #weigher: Weigher;
  readonly #places: readonly ResistivePlace[];
  readonly #checkpoint: () => void;
  readonly #joint: number;
  /** ln of the evidence that a start must come up to, to be gone on from. */
  #floor = Number.NEGATIVE_INFINITY;

  constructor(build: Build, weigher: Weigher, places: readonly ResistivePlace[], checkpoint: () => void) {
    this.#build = build;
    this.#weigher = weigher;
    this.#places = places;
    this.#checkpoint = checkpoint;
    this.#joint = this.#parameters.findIndex(isSpareJoint);
  }

  get #parameters() {
    return this.#weigher.sound.parts.parameters;
  }

  /**
   * Every value that may be another than the build's, with what the readings speak for; at most so many predictions are made.
   * Parts that the readings do not move out of their tolerance are left out: they are sound.
   * @param known what is weighed already: a start far behind the best of it is left
   */
  singles(most: number, known: readonly Hypothesis[]): Hypothesis[] {
    const best = known.reduce((log, { evidence }) => Math.max(log, evidence.log), Number.NEGATIVE_INFINITY);
    this.#floor = best - HOPELESS;
    return this.#besideOne(this.#weigher.weigh([]), Math.floor(most / SOLVING_COST));
  }

  /** Each of these single faults joined by another value. */
  beside(seeds: readonly Hypothesis[], most: number): Hypothesis[] {
    const perSeed = this.#parameters.length + this.#places.length;
    const count = Math.floor(most / SOLVING_COST / Math.max(1, perSeed));
    return seeds.slice(0, count).flatMap((seed) => this.#besideOne(seed, perSeed));
  }

  #besideOne(base: Hypothesis, most: number): Hypothesis[] {
    this.#checkpoint();
    const parts = this.#parameters
      .slice(0, most)
      .flatMap((parameter, index) => (index === this.#joint ? [] : this.#withPart(base, index, parameter.part)));
    const places = this.#places.slice(0, Math.max(0, most - this.#parameters.length));
    return [...parts, ...places.flatMap((place) => this.#withJoint(base, place))];
  }

  #withPart(base: Hypothesis, index: number, part: string): Hypothesis[] {
    if (fitsWell(base)) return [];
    const isTaken = base.faults.some(({ edits }) => edits.some((edit) => "part" in edit && edit.part === part));
    if (isTaken || !this.#shows(base, index)) return [];
    const solved = this.#weigher.solved(base.model, index, PART_STARTS, MAX_FACTOR, this.#floor);
    const spec = this.#parameters[index]!;
    if (!solved || Math.abs(solved.factor - 1) <= spec.tolerance.fraction) return [];
    const fault = valueFault(this.#build, spec, solved.factor);
    return fault ? [this.#weigher.withEvidence([...base.faults, fault], solved.evidence)] : [];
  }

  #withJoint(base: Hypothesis, place: ResistivePlace): Hypothesis[] {
    if (base.faults.some(isAtJoint)) return [];
    const { edit, faults } = place;
    const poor = this.#weigher.weigh([...base.faults, ...faults(JOINT_OHMS).slice(0, 1)]);
    if (!this.#shows(poor, this.#joint)) return this.#unseen(base, place, 1);
    if (fitsWell(base)) return this.#unseen(base, place, SLIGHT_SHARE);
    const solved = this.#weigher.solved(
      poor.model,
      this.#joint,
      JOINT_STARTS,
      POOR_JOINT.most / JOINT_OHMS,
      this.#floor,
    );
    const ohms = JOINT_OHMS * (solved?.factor ?? 0);
    const gain = solved && ohms >= POOR_JOINT.least ? solved.evidence.log - base.evidence.log : 0;
    const slight = gain < SURE_GAIN ? this.#unseen(base, place, SLIGHT_SHARE) : [];
    if (!solved || gain < MIN_GAIN) return slight;
    const poorOnes = faults(ohms).map((fault) =>
      this.#weigher.withEvidence([...base.faults, { ...fault, edits: [edit(ohms)] }], solved.evidence),
    );
    return [...poorOnes, ...slight];
  }

  /** Poor joints that nothing measured shows, or that are too slight to, beside a guard that is sound otherwise. */
  #unseen(base: Hypothesis, { edit, unseen, unseenOhms }: ResistivePlace, share: number): Hypothesis[] {
    if (base.faults.length > 0) return [];
    return unseen.map((fault) => {
      const hypothesis = this.#weigher.weigh([{ ...fault, edits: [edit(unseenOhms)] }]);
      return { ...hypothesis, logPrior: hypothesis.logPrior + Math.log(share) };
    });
  }

  /** Whether the parameter moves any reading at all. */
  #shows({ prediction: { slopes } }: Hypothesis, parameter: number): boolean {
    for (let at = parameter; at < slopes.length; at += this.#weigher.unknownCount) if (slopes[at] !== 0) return true;
    return false;
  }
}

function fitsWell({ explains, evidence }: Hypothesis): boolean {
  return explains && evidence.fit >= GOOD_FIT;
}
