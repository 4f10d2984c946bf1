import type { Take } from "../takes/take.ts";
import type { Contribution, Evidence, Subject } from "./evidence.ts";
import { type Drive, driveOf, type Laid, limitWeight, variancesOf } from "./exciter-drive.ts";
import { reachOf } from "./exciter-reach.ts";
import { fillRows } from "./exciter-rows.ts";
import { type Transfer, transferAt } from "./exciter-transfer.ts";
import { FLOOR, TOGETHER } from "./floor.ts";
import { contributionOf } from "./rows.ts";

/** Its strength is known to some such factor from the other placements, and a coil that needs many times that to be heard is none. */
const MOST_STRONGER = 10;

/**
 * A coil driven by another one laid over it, in several settings: how strongly and with what slope of its own is not known, so
 * only what differs between the settings counts. The exciter shows a coil's winding, not its magnet.
 */
export class ExciterEvidence implements Evidence {
  readonly laid: Laid;
  /** How strong a drive may be; 0 for any. */
  readonly mostDrive: number;

  /** @param drive how strong it is by the other placements, were the guard as drawn; 0 where nobody knows */
  constructor(laid: Laid, drive = 0) {
    this.laid = laid;
    this.mostDrive = MOST_STRONGER * drive;
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
    return this.laid.takes.map(({ take, settingIndex }) =>
      transferAt(subject.viewOf(settingIndex), subject, this.laid.placement, settingIndex, take.frequenciesHz),
    );
  }

  /** The drive that a guard's takes speak for, frequency by frequency, and how strong it is in the middle of them. */
  driveOf(subject: Subject): Drive & { readonly middle: number } {
    const drive = driveOf(this.laid, this.transfers(subject), variancesOf(this.laid, FLOOR), this.mostDrive);
    const { re, im } = drive;
    const sizes = re.map((x, i) => Math.hypot(x, im[i]!)).sort();
    return { ...drive, middle: sizes[Math.floor(sizes.length / 2)]! };
  }

  /** What a guard would have had recorded in one of the takes. */
  heard(subject: Subject, take: Take): { re: Float64Array; im: Float64Array } {
    const which = this.laid.takes.findIndex((each) => each.take === take);
    const drive = this.driveOf(subject);
    const { re, im } = this.transfers(subject)[which]!;
    return {
      re: re.map((x, i) => drive.re[i]! * x - drive.im[i]! * im[i]!),
      im: re.map((x, i) => drive.re[i]! * im[i]! + drive.im[i]! * x),
    };
  }

  apart(one: Subject, other: Subject, floor: number): number {
    const variances = variancesOf(this.laid, floor);
    const [a, b] = [one, other].map((subject) => {
      const transfers = this.transfers(subject);
      return { transfers, drive: driveOf(this.laid, transfers, variances, this.mostDrive) };
    }) as [{ transfers: Transfer[]; drive: Drive }, { transfers: Transfer[]; drive: Drive }];
    const heard = ({ transfers, drive }: typeof a, j: number, i: number) => {
      const { re, im } = transfers[j]!;
      return [drive.re[i]! * re[i]! - drive.im[i]! * im[i]!, drive.re[i]! * im[i]! + drive.im[i]! * re[i]!] as const;
    };
    return variances.reduce(
      (sum, ofTake, j) =>
        ofTake.reduce((all, variance, i) => {
          const [p, q] = [heard(a, j, i), heard(b, j, i)];
          return all + ((p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2) / variance;
        }, sum),
      0,
    );
  }

  weigh(subject: Subject, floor: number): Contribution {
    const { takes } = this.laid;
    const count = takes[0]!.take.re.length;
    const variances = variancesOf(this.laid, floor);
    const transfers = this.transfers(subject);
    const drive = driveOf(this.laid, transfers, variances, this.mostDrive);
    const unknowns = [...new Set(transfers.flatMap((each) => each.unknowns))];
    // Beside the takes, how far the drive is from none, by what it may be.
    const length = 2 * count * (takes.length + 1);
    const limit = Math.sqrt(limitWeight(this.mostDrive));
    const residual = new Float64Array(length);
    const rows = new Float64Array(unknowns.length * length);
    let degrees = 0;
    for (let i = 0; i < count; i++) {
      const [kRe, kIm] = [drive.re[i]!, drive.im[i]!];
      for (const [j, { take }] of takes.entries()) {
        const weight = 1 / Math.sqrt(variances[j]![i]!);
        const { re, im } = transfers[j]!;
        const at = 2 * count * j + i;
        residual[at] = weight * (take.re[i]! - kRe * re[i]! + kIm * im[i]!);
        residual[at + count] = weight * (take.im[i]! - kRe * im[i]! - kIm * re[i]!);
        const own = take.sd[i]! ** 2;
        degrees += (2 * (own + (variances[j]![i]! - own) / TOGETHER)) / variances[j]![i]!;
      }
      const last = 2 * count * takes.length + i;
      residual[last] = -limit * kRe;
      residual[last + count] = -limit * kIm;
      fillRows(i, rows, unknowns, transfers, variances, drive, limit);
    }
    const free = (2 * count) / TOGETHER;
    return contributionOf(residual, rows, unknowns, Math.max(0, degrees - free));
  }
}
