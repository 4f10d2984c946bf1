import type { Build } from "../../build-file/schema.ts";
import { decibels } from "../../decibels.ts";
import { type ForetoldTap, foretoldTaps } from "../../measure/taps/foretold-taps.ts";
import type { HeardTap } from "../../measure/taps/hear-taps.ts";
import { tapLogLikelihood } from "../../measure/taps/tap-likelihood.ts";
import type { TapInput } from "../../measure/taps/tap-transfers.ts";
import type { Contribution, Evidence, Subject } from "./evidence.ts";

/** A hand tells no smaller step of a level, in dB. */
const STEP_DB = 1;

const NONE = new Float64Array(0);

/**
 * What a take of taps says: which rows sound where, and which way they swing. No tolerance bends that, so that only a guard's wiring is
 * asked, its parts as drawn.
 */
export class TapEvidence implements Evidence {
  readonly #heard: readonly HeardTap[];
  readonly #input: TapInput | undefined;
  readonly #foretold = new WeakMap<Build, readonly ForetoldTap[]>();
  readonly #logs = new WeakMap<Build, number>();

  constructor(heard: readonly HeardTap[], input?: TapInput) {
    this.#heard = heard;
    this.#input = input;
  }

  #foretoldBy(build: Build): readonly ForetoldTap[] {
    const known = this.#foretold.get(build);
    if (known) return known;
    const steps = this.#heard.map(({ step }) => step);
    const foretold = foretoldTaps(build, steps, this.#input);
    this.#foretold.set(build, foretold);
    return foretold;
  }

  /** ln P(taps | guard), but for what all guards share. */
  log({ build }: Pick<Subject, "build">): number {
    const known = this.#logs.get(build);
    if (known !== undefined) return known;
    const log = tapLogLikelihood(this.#heard, this.#foretoldBy(build));
    this.#logs.set(build, log);
    return log;
  }

  keyOf({ build }: Omit<Subject, "point">): string {
    return this.#foretoldBy(build)
      .map(({ re, im, leak }) => {
        const size = Math.hypot(re, im);
        const level = Math.round(decibels(Math.hypot(size, leak)) / STEP_DB);
        return size > leak && re < 0 ? `-${level}` : `${level}`;
      })
      .join();
  }

  apart(one: Subject, other: Subject): number {
    return 2 * Math.abs(this.log(one) - this.log(other));
  }

  weigh(subject: Subject): Contribution {
    const extra = -2 * this.log(subject);
    return { squares: extra, extra, unknowns: [], right: NONE, curvature: NONE, degrees: 0 };
  }
}
