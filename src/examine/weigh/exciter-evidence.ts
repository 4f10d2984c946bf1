import type { Take } from "../takes/take.ts";
import type { Contribution, Evidence, Subject } from "./evidence.ts";
import { type Drive, driveOf, type Laid, limitWeight, type UsualDrive, variancesOf } from "./exciter-drive.ts";
import { reachOf } from "./exciter-reach.ts";
import { fillRows } from "./exciter-rows.ts";
import { type Transfer, transferAt } from "./exciter-transfer.ts";
import { FLOOR, TOGETHER } from "./floor.ts";
import { contributionOf } from "./rows.ts";

const middleOf = (sizes: Float64Array) => sizes.toSorted()[Math.floor(sizes.length / 2)]!;

type Heard = Pick<Transfer, "re" | "im">;

const heardOf = (drive: Drive, { re, im }: Transfer): Heard => ({
  re: re.map((x, i) => drive.re[i]! * x - drive.im[i]! * im[i]!),
  im: re.map((x, i) => drive.re[i]! * im[i]! + drive.im[i]! * x),
});

/**
 * A coil driven by another one laid over it, in several settings: how strongly and with what slope of its own is not known, so
 * only what differs between the settings counts. The exciter shows a coil's winding, not its magnet.
 */
export class ExciterEvidence implements Evidence {
  readonly laid: Laid;
  readonly #usual: UsualDrive;
  readonly #loudest: Float64Array | undefined;
  readonly #known = new WeakMap<Subject, Transfer[]>();

  /**
   * @param usual what it drives by the other placements, were the guard as drawn; left out where nobody knows
   * @param loudest of all placements' takes, frequency by frequency
   */
  constructor(laid: Laid, usual?: UsualDrive, loudest?: Float64Array) {
    const none = new Float64Array(laid.takes[0]!.take.re.length);
    this.laid = laid;
    this.#usual = usual ?? { re: none, im: none, most: 0 };
    this.#loudest = loudest;
  }

  keyOf(subject: Omit<Subject, "point">): string {
    return this.laid.takes
      .map(({ settingIndex }) => {
        const view = subject.viewOf(settingIndex);
        const { own, shares } = reachOf(view, subject, this.laid.placement);
        return `${view.shape} ${JSON.stringify([[...own], [...shares].map(([field, to]) => [field, ...to])])}`;
      })
      .join(";");
  }

  transfers(subject: Subject): Transfer[] {
    const known = this.#known.get(subject);
    if (known) return known;
    const made = this.laid.takes.map(({ take, settingIndex }) =>
      transferAt(subject.viewOf(settingIndex), subject, this.laid.placement, settingIndex, take.frequenciesHz),
    );
    this.#known.set(subject, made);
    return made;
  }

  #variances(floor: number): Float64Array[] {
    return variancesOf(this.laid, floor, this.#loudest);
  }

  /** The drive that a guard's takes speak for, frequency by frequency; how strong it is in the middle of them, and over its error. */
  driveOf(subject: Subject): Drive & { readonly middle: number; readonly overError: number } {
    const drive = driveOf(this.laid, this.transfers(subject), this.#variances(FLOOR), this.#usual);
    const { re, im, power } = drive;
    const sizes = re.map((x, i) => Math.hypot(x, im[i]!));
    return {
      ...drive,
      middle: middleOf(sizes),
      overError: middleOf(sizes.map((size, i) => size * Math.sqrt(power[i]!))),
    };
  }

  /** What a guard would have had recorded in one of the takes. */
  heard(subject: Subject, take: Take): Heard {
    const which = this.laid.takes.findIndex((each) => each.take === take);
    return heardOf(this.driveOf(subject), this.transfers(subject)[which]!);
  }

  apart(one: Subject, other: Subject, floor: number): number {
    const variances = this.#variances(floor);
    const [a, b] = [one, other].map((subject) => {
      const transfers = this.transfers(subject);
      const drive = driveOf(this.laid, transfers, variances, this.#usual);
      return transfers.map((each) => heardOf(drive, each));
    }) as [Heard[], Heard[]];
    return variances.reduce((sum, ofTake, j) => {
      const [p, q] = [a[j]!, b[j]!];
      return ofTake.reduce((all, variance, i) => {
        return all + ((p.re[i]! - q.re[i]!) ** 2 + (p.im[i]! - q.im[i]!) ** 2) / variance;
      }, sum);
    }, 0);
  }

  weigh(subject: Subject, floor: number): Contribution {
    const { takes } = this.laid;
    const count = takes[0]!.take.re.length;
    const variances = this.#variances(floor);
    const transfers = this.transfers(subject);
    const drive = driveOf(this.laid, transfers, variances, this.#usual);
    const unknowns = [...new Set(transfers.flatMap((each) => each.unknowns))];
    // Beside the takes, how far the drive is from the usual one, by what it may be off.
    const length = 2 * count * (takes.length + 1);
    const limit = Math.sqrt(limitWeight(this.#usual));
    const residual = new Float64Array(length);
    const rows = new Float64Array(unknowns.length * length);
    let [degrees, freed] = [0, 0];
    for (let i = 0; i < count; i++) {
      const [kRe, kIm] = [drive.re[i]!, drive.im[i]!];
      let shares = 0;
      for (const [j, { take }] of takes.entries()) {
        const weight = 1 / Math.sqrt(variances[j]![i]!);
        const { re, im } = transfers[j]!;
        const at = 2 * count * j + i;
        residual[at] = weight * (take.re[i]! - kRe * re[i]! + kIm * im[i]!);
        residual[at + count] = weight * (take.im[i]! - kRe * im[i]! - kIm * re[i]!);
        const own = take.sd[i]! ** 2;
        shares += (own + (variances[j]![i]! - own) / TOGETHER) / variances[j]![i]!;
      }
      degrees += 2 * shares;
      // A drive takes as many residuals as it is free in, and of a coil that is not heard it is in none.
      if (drive.power[i]! > 0)
        freed += ((2 * shares) / takes.length) * (1 - limitWeight(this.#usual) / drive.power[i]!);
      const last = 2 * count * takes.length + i;
      residual[last] = limit * (this.#usual.re[i]! - kRe);
      residual[last + count] = limit * (this.#usual.im[i]! - kIm);
      fillRows(i, rows, unknowns, transfers, variances, drive, limit);
    }
    const made = contributionOf(residual, rows, unknowns, Math.max(0, degrees - freed));
    // What it accounts for of noise alone speaks for no guard.
    return { ...made, squares: made.squares + freed, extra: freed };
  }
}
