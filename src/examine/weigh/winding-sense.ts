import type { Contribution, Evidence, Subject } from "./evidence.ts";
import type { ExciterEvidence } from "./exciter-evidence.ts";

/** A sum that is not so many of its own errors from nothing has no sign. */
const CLEAR = 2;

/** How often somebody lays an exciter with a marked side the wrong side up (common practice, no source). */
const SLIP = 0.002;
const [FROM_HZ, TO_HZ] = [90, 900];

/**
 * The sense of one coil's winding against the others': an exciter with the same side up drives them all alike, so a guard in which one
 * needs an opposite drive has it the other way about, or the exciter was turned over.
 */
export class WindingSense implements Evidence {
  readonly placements: readonly ExciterEvidence[];

  constructor(placements: readonly ExciterEvidence[]) {
    this.placements = placements;
  }

  keyOf(subject: Omit<Subject, "point">): string {
    return this.placements.map((each) => each.keyOf(subject)).join("|");
  }

  /** The sign of each placement's drive beside the first one's; 0 where it is not told from what either is off by. */
  signs(subject: Subject): number[] {
    const drives = this.placements.map((each) => each.driveOf(subject));
    const first = drives[0]!;
    const frequenciesHz = this.placements[0]!.laid.takes[0]!.take.frequenciesHz;
    const isUsed = (hz: number) => hz >= FROM_HZ && hz <= TO_HZ;
    return drives.map(({ re, im, power }) => {
      let [sum, variance] = [0, 0];
      for (const [i, hz] of frequenciesHz.entries()) {
        if (!isUsed(hz) || power[i]! === 0 || first.power[i]! === 0) continue;
        sum += re[i]! * first.re[i]! + im[i]! * first.im[i]!;
        // Of a drive's real and imaginary part each, 1 / power.
        const [own, its] = [1 / power[i]!, 1 / first.power[i]!];
        variance += own * (first.re[i]! ** 2 + first.im[i]! ** 2) + its * (re[i]! ** 2 + im[i]! ** 2) + 2 * own * its;
      }
      return Math.abs(sum) > CLEAR * Math.sqrt(variance) ? Math.sign(sum) : 0;
    });
  }

  apart(one: Subject, other: Subject): number {
    return 2 * Math.abs(this.#log(this.signs(one)) - this.#log(this.signs(other)));
  }

  weigh(subject: Subject): Contribution {
    const extra = -2 * this.#log(this.signs(subject));
    const none = new Float64Array(0);
    return { squares: extra, extra, unknowns: [], right: none, curvature: none, degrees: 0 };
  }

  /** All signs alike but for slips, whichever sign that is. */
  #log(signs: readonly number[]): number {
    const likely = (sign: number) =>
      signs.reduce((product, each) => (each === 0 ? product / 2 : product * (each === sign ? 1 - SLIP : SLIP)), 1);
    return Math.log((likely(1) + likely(-1)) / 2);
  }
}
