import type { Take } from "../takes/take.ts";
import type { Contribution, Evidence, Subject } from "./evidence.ts";
import { CROSSTALK, FLOOR, TOGETHER } from "./floor.ts";
import { type Share, shareAt } from "./jack-share.ts";
import { contributionOf } from "./rows.ts";

/** Variance of each point: its own, and the floor's, of which several neighbours count as one. */
function variances({ re, im, sd }: Take, floor: number, together: number): { all: Float64Array; independent: number } {
  let independent = 0;
  const all = re.map((x, i) => {
    // d ln Z of `floor` moves t by floor · t·(1 − t).
    const moved = floor * Math.hypot(x, im[i]!) * Math.hypot(1 - x, im[i]!);
    const square = moved * moved + CROSSTALK * CROSSTALK;
    const own = sd[i]! ** 2;
    independent += (own + square) / (own + together * square);
    return own + together * square;
  });
  return { all, independent: 2 * independent };
}

function halved(take: Take): Take {
  const every = (column: Float64Array) => column.filter((_, index) => index % 2 === 0);
  const { frequenciesHz, re, im, sd } = take;
  return { ...take, frequenciesHz: every(frequenciesHz), re: every(re), im: every(im), sd: every(sd) };
}

/** A sweep through a resistor into the jack. */
export class JackEvidence implements Evidence {
  readonly take: Take;
  readonly settingIndex: number;

  readonly #together: number;
  /** The same at every second frequency, for looks that need no more. */
  readonly #coarse: JackEvidence | undefined;

  constructor(take: Take, settingIndex: number, together = TOGETHER) {
    this.take = take;
    this.settingIndex = settingIndex;
    this.#together = together;
    this.#coarse = together === TOGETHER ? new JackEvidence(halved(take), settingIndex, together / 2) : undefined;
  }

  keyOf({ viewOf }: Omit<Subject, "point">): string {
    return viewOf(this.settingIndex).shape;
  }

  predict(subject: Subject): Share {
    return shareAt(subject.viewOf(this.settingIndex), subject, this.take.frequenciesHz);
  }

  apart(one: Subject, other: Subject, floor: number): number {
    const [a, b] = [this.predict(one), this.predict(other)];
    const { all } = variances(this.take, floor, this.#together);
    return all.reduce(
      (sum, variance, i) => sum + ((a.re[i]! - b.re[i]!) ** 2 + (a.im[i]! - b.im[i]!) ** 2) / variance,
      0,
    );
  }

  weigh(subject: Subject, floor: number): Contribution {
    if (floor > FLOOR && this.#coarse) return this.#coarse.weigh(subject, floor);
    const { re, im, unknowns, slopesRe, slopesIm } = this.predict(subject);
    const { all, independent } = variances(this.take, floor, this.#together);
    const count = re.length;
    const weights = all.map((variance) => 1 / Math.sqrt(variance));
    const residual = new Float64Array(2 * count);
    const rows = new Float64Array(unknowns.length * 2 * count);
    for (let i = 0; i < count; i++) {
      residual[i] = weights[i]! * (this.take.re[i]! - re[i]!);
      residual[count + i] = weights[i]! * (this.take.im[i]! - im[i]!);
      for (let k = 0; k < unknowns.length; k++) {
        rows[k * 2 * count + i] = weights[i]! * slopesRe[k * count + i]!;
        rows[k * 2 * count + count + i] = weights[i]! * slopesIm[k * count + i]!;
      }
    }
    return contributionOf(residual, rows, unknowns, independent);
  }
}
